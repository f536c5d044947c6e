#include "adapters/in/words/written_line.hpp"

#include <fmt/format.h>

#include <algorithm>
#include <array>

#include "adapters/in/files/nearest.hpp"
#include "adapters/in/text/printable.hpp"
#include "engine/sinking/section.hpp"
#include "engine/tackle/line_code.hpp"

namespace floatwright {
namespace {

constexpr std::string_view kExample = "sinking tip 12.5 ft 5 in/s";
constexpr int kUsualNumber = 6;
constexpr Length kLeastTip = metres(0.3), kMostTip = metres(30.0);
constexpr Speed kLeastRate = metres_per_second(0.005), kMostRate = metres_per_second(0.5);
constexpr Length kThinnest = millimetres(0.2), kThickest = millimetres(4.0);
constexpr LinearDensity kLightest = kilograms_per_metre(1e-4), kHeaviest = kilograms_per_metre(0.02);

struct KindWords {
  std::string_view words;  // without the small ones
  LineKind kind;
};
constexpr KindWords kKinds[] = {
    {"floating", LineKind::Floating},
    {"weight forward floating", LineKind::Floating},
    {"weight forward", LineKind::Floating},
    {"nymph taper", LineKind::NymphTaper},
    {"floating nymph taper", LineKind::NymphTaper},
    {"double taper", LineKind::DoubleTaper},
    {"floating double taper", LineKind::DoubleTaper},
    {"shooting head", LineKind::ShootingHead},
    {"floating shooting head", LineKind::ShootingHead},
    {"floating sinking leader", LineKind::FloatingWithSinkingLeader},
    {"sinking leader", LineKind::FloatingWithSinkingLeader},
    {"sinking tip", LineKind::SinkingTip},
    {"tip", LineKind::SinkingTip},
    {"looped head", LineKind::LoopedHead},
    {"looped head tip", LineKind::LoopedHead},
    {"clear tip", LineKind::ClearTip},
    {"full sinking", LineKind::FullSinking},
    {"thin nymph", LineKind::ThinNymphLine},
    {"thin nymphing", LineKind::ThinNymphLine},
    {"mono rig", LineKind::MonoRig},
};
constexpr std::array<std::string_view, 6> kSmallWords{"line", "lines", "with", "and", "a", "rate"};

enum class Sinks { Nothing, APart, Whole };
Sinks sinks(LineKind kind) {
  switch (kind) {
    case LineKind::FloatingWithSinkingLeader:
    case LineKind::SinkingTip:
    case LineKind::LoopedHead:
    case LineKind::ClearTip:
      return Sinks::APart;
    case LineKind::FullSinking:
      return Sinks::Whole;
    default:
      return Sinks::Nothing;
  }
}

class Writer {
 public:
  Writer(std::string_view option, std::string_view text) : option_(option), text_(text) {}

  Result<WrittenLine> line() {
    const auto phrase = phrase_of(option_, text_, kExample);
    if (!phrase) return tl::unexpected(phrase.error());
    written_.line.id = printable(text_);
    if (auto failed = take_kind(*phrase)) return tl::unexpected(*failed);
    if (auto failed = take_code(*phrase)) return tl::unexpected(*failed);
    for (const Amount& amount : phrase->amounts)
      if (auto failed = take_amount(amount)) return tl::unexpected(*failed);
    if (auto failed = take_rate()) return tl::unexpected(*failed);
    if (auto failed = incomplete()) return tl::unexpected(*failed);
    finish();
    return written_;
  }

 private:
  using Trouble = std::optional<Failure>;
  [[nodiscard]] Failure refused(const std::string& why) const {
    return {fmt::format("{}: found \"{}\"; {}", option_, printable(text_), why), kExitUsage};
  }

  Trouble take_kind(const Phrase& phrase) {
    std::string words;
    for (const std::string& word : phrase.words)
      if (std::ranges::find(kSmallWords, std::string_view(word)) == kSmallWords.end())
        words += (words.empty() ? "" : " ") + word;
    if (words.empty() && !phrase.codes.empty()) return std::nullopt;  // the code says it
    const auto known = std::ranges::find(kKinds, std::string_view(words), &KindWords::words);
    if (known != std::end(kKinds)) {
      written_.line.kind = known->kind;
      named_ = true;
      return std::nullopt;
    }
    std::vector<std::string> all;
    for (const KindWords& kind : kKinds) all.emplace_back(kind.words);
    return refused(words.empty()
                       ? fmt::format("say what kind of line it is, such as \"{}\"", kExample)
                       : fmt::format("no line is called \"{}\"; the nearest kind is \"{}\", written as \"{}\"",
                                     printable(words), nearest_word(words, all), kExample));
  }

  Trouble take_code(const Phrase& phrase) {
    for (const std::string& typed : phrase.codes) {
      const auto code = read_line_code(typed);
      if (!code)
        return refused(fmt::format("\"{}\" is no line's code; a code is taper, number and function, such as WF-6-F",
                                   printable(typed)));
      written_.line.code = typed;
      written_.line.line_number = code->number;
      if (!named_) written_.line.kind = kind_of(*code);
    }
    return std::nullopt;
  }

  static LineKind kind_of(const LineCode& code) {
    if (code.function == LineFunction::FloatingWithSinkingTip) return LineKind::SinkingTip;
    if (code.function != LineFunction::Floating) return LineKind::FullSinking;
    if (code.taper == Taper::DoubleTaper) return LineKind::DoubleTaper;
    const bool head = code.taper == Taper::SingleTaper || code.taper == Taper::ShootingHead;
    return head ? LineKind::ShootingHead : LineKind::Floating;
  }

  Trouble take_amount(const Amount& amount) {
    Line& line = written_.line;
    switch (amount.kind) {
      case AmountKind::OfLength:
        return take_length(amount);
      case AmountKind::OfSpeed:
        if (line.sink_rate_butt)
          return refused("it has two sink rates; those of butt and end are written \"4 to 6 in/s\"");
        line.sink_rate_butt = metres_per_second(amount.from);
        line.sink_rate_end = metres_per_second(amount.to);
        return std::nullopt;
      case AmountKind::OfMassPerLength:
        if (line.sinking_weight || amount.from != amount.to)
          return refused("give one weight per length, such as \"11 gr/ft\"");
        line.sinking_weight = kilograms_per_metre(amount.from);
        if (*line.sinking_weight >= kLightest && *line.sinking_weight <= kHeaviest) return std::nullopt;
        return refused("a line weighs 0.5 to 94 gr/ft, that is 0.1 to 20 g/m");
      case AmountKind::OfLineNumber:
        if (amount.from == amount.to && amount.from >= 1 && amount.from <= 15 &&
            amount.from == static_cast<int>(amount.from)) {
          line.line_number = static_cast<int>(amount.from);
          return std::nullopt;
        }
        return refused("a line's number is a whole one from 1 to 15");
      default:
        return refused(fmt::format("{} says nothing of a line; write it as \"{}\"", amount.typed, kExample));
    }
  }

  // Thicker than any line is a length of it.
  Trouble take_length(const Amount& amount) {
    std::optional<Length>& place = metres(amount.from) < kLeastTip ? diameter_ : written_.line.tip_length;
    if (place || amount.from != amount.to)
      return refused(fmt::format("give one length and at most one diameter, such as \"{} 1.0 mm\"", kExample));
    place = metres(amount.from);
    const bool fits = &place == &diameter_ ? *place >= kThinnest && *place <= kThickest : *place <= kMostTip;
    if (fits) return std::nullopt;
    return refused("a sinking part is 1 to 98 ft (0.3 to 30 m) long and 0.2 to 4 mm thick");
  }

  // Grains per foot and the measured diameter are the expert's way: the rate follows.
  Trouble take_rate() {
    Line& line = written_.line;
    if (diameter_ && line.sink_rate_butt)
      return refused("give the sink rate, or the weight per length with the diameter: one follows from the other");
    if (diameter_ && !line.sinking_weight)
      return refused("beside the diameter give what a foot of it weighs, such as \"11 gr/ft\"");
    if (!diameter_) return std::nullopt;
    const auto rate = sink_rate(*line.sinking_weight, *diameter_, water_at(celsius(10.0)));
    if (!rate) return refused(rate.why_absent());
    if (!(*rate > Speed{}))
      return refused("a line of this weight and diameter floats; a sinking part is heavier than water");
    line.sink_rate_butt = line.sink_rate_end = *rate;
    return std::nullopt;
  }

  Trouble incomplete() const {
    const Line& line = written_.line;
    const Sinks sinking = sinks(line.kind);
    if (sinking == Sinks::Nothing && (line.tip_length || line.sink_rate_butt || line.sinking_weight))
      return refused("this kind of line floats all along: it has neither a sinking length nor a sink rate");
    if (sinking == Sinks::APart && !line.tip_length)
      return refused(fmt::format("say how long its sinking part is, such as \"{}\"", kExample));
    if (sinking == Sinks::Whole && line.tip_length)
      return refused("a full sinking line sinks all along: give its sink rate alone");
    if (sinking == Sinks::Nothing) return std::nullopt;
    if (!line.sink_rate_butt)
      return refused(
          "say how fast it sinks, such as \"5 in/s\", or what a foot weighs and how thick it is, such as \"11 gr/ft "
          "1.0 mm\"");
    for (const Speed rate : {*line.sink_rate_butt, *line.sink_rate_end})
      if (rate < kLeastRate || rate > kMostRate) return refused("lines sink at 0.2 to 20 in/s, that is 0.5 to 50 cm/s");
    return std::nullopt;
  }

  void finish() {
    Line& line = written_.line;
    if (line.line_number == 0) line.line_number = kUsualNumber;
    if (!line.sink_rate_butt) return;
    line.sink_rate = (*line.sink_rate_butt + *line.sink_rate_end) * 0.5;
    if (*line.sink_rate_butt == *line.sink_rate_end) line.sink_rate_butt = line.sink_rate_end = std::nullopt;
    if (line.kind != LineKind::LoopedHead) return;
    written_.tip = LoopedTip{line.id, *line.tip_length, *line.sink_rate, {}};
    line.tip_length = std::nullopt;
    line.sink_rate = std::nullopt;
  }

  std::string_view option_, text_;
  WrittenLine written_;
  std::optional<Length> diameter_;
  bool named_ = false;
};

}  // namespace

Result<WrittenLine> line_in(std::string_view option, std::string_view text) { return Writer(option, text).line(); }

}  // namespace floatwright
