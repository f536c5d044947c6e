#include "adapters/in/words/written_fly.hpp"

#include <fmt/format.h>

#include <algorithm>

#include "adapters/in/files/nearest.hpp"
#include "adapters/in/text/printable.hpp"
#include "engine/tackle/usual_flies.hpp"

namespace floatwright {
namespace {

constexpr std::string_view kExample = "weighted streamer\" or \"0.6 g 4 in/s";
constexpr Mass kLightest = grams(0.001), kHeaviest = grams(20.0);
constexpr Speed kFastest = metres_per_second(1.0);

Failure refused(std::string_view option, std::string_view text, const std::string& why) {
  return {fmt::format("{}: found \"{}\"; {}", option, printable(text), why), kExitUsage};
}

std::string joined(const std::vector<std::string>& words) { return fmt::format("{}", fmt::join(words, " ")); }

std::optional<Failure> take(FlyClass& fly, const Amount& amount, std::string_view option, std::string_view text) {
  if (amount.from != amount.to)
    return refused(option, text, fmt::format("give one amount, not a range: \"{}\"", kExample));
  if (amount.kind == AmountKind::OfMass) {
    fly.mass = kilograms(amount.from);
    if (*fly.mass >= kLightest && *fly.mass <= kHeaviest) return std::nullopt;
    return refused(option, text, "a fly weighs 0.001 to 20 g");
  }
  if (amount.kind == AmountKind::OfSpeed) {
    fly.sink_rate = metres_per_second(amount.from);
    if (fly.sink_rate >= Speed{} && fly.sink_rate <= kFastest) return std::nullopt;
    return refused(option, text, "a fly sinks at 0 (it floats) to 39 in/s, that is to 1 m/s");
  }
  return refused(
      option, text,
      fmt::format("{} says nothing of a fly; give its mass and sink rate, such as \"{}\"", amount.typed, kExample));
}

}  // namespace

Result<FlyClass> fly_in(std::string_view option, std::string_view text) {
  const auto phrase = phrase_of(option, text, kExample);
  if (!phrase) return tl::unexpected(phrase.error());
  const std::string name = joined(phrase->words);
  FlyClass fly;
  const auto& usual = usual_flies();
  const auto known = std::ranges::find(usual, name, &FlyClass::name);
  if (known != usual.end()) fly = *known;
  if (known == usual.end() && (!name.empty() && name != "fly")) {
    std::vector<std::string> names;
    for (const FlyClass& one : usual) names.push_back(one.name);
    return tl::unexpected(refused(
        option, text,
        fmt::format(
            "no class of fly is called so; the nearest is \"{}\"; or give its mass and sink rate, \"0.6 g 4 in/s\"",
            nearest_word(name, names))));
  }
  if (!phrase->codes.empty()) return tl::unexpected(refused(option, text, fmt::format("write it as \"{}\"", kExample)));
  bool rated = known != usual.end();
  for (const Amount& amount : phrase->amounts) {
    if (auto failed = take(fly, amount, option, text)) return tl::unexpected(*failed);
    rated = rated || amount.kind == AmountKind::OfSpeed;
  }
  if (!fly.mass || !rated)
    return tl::unexpected(
        refused(option, text, fmt::format("give its class, or its mass and sink rate: \"{}\"", kExample)));
  if (known == usual.end()) {
    fly.uses = fly.sink_rate > Speed{} ? std::vector{Method::Swing, Method::Strip, Method::Indicator, Method::TightLine}
                                       : std::vector{Method::Dry};
  }
  if (known == usual.end() || !phrase->amounts.empty())
    fly.id = fly.name = known == usual.end() ? "fly " + printable(text) : printable(text);
  return fly;
}

}  // namespace floatwright
