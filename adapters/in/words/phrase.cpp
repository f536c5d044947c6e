#include "adapters/in/words/phrase.hpp"

#include <fmt/format.h>

#include <algorithm>
#include <cctype>
#include <charconv>
#include <cmath>
#include <optional>

#include "adapters/in/text/printable.hpp"
#include "engine/units/unit.hpp"

namespace floatwright {
namespace {

struct Unit {
  std::string_view word;
  AmountKind kind;
  double (*si)(double);
};

constexpr Unit kUnits[] = {
    {"ft", AmountKind::OfLength, [](double v) { return feet(v).si(); }},
    {"feet", AmountKind::OfLength, [](double v) { return feet(v).si(); }},
    {"foot", AmountKind::OfLength, [](double v) { return feet(v).si(); }},
    {"in", AmountKind::OfLength, [](double v) { return inches(v).si(); }},
    {"m", AmountKind::OfLength, [](double v) { return v; }},
    {"cm", AmountKind::OfLength, [](double v) { return v / 100.0; }},
    {"mm", AmountKind::OfLength, [](double v) { return millimetres(v).si(); }},
    {"in/s", AmountKind::OfSpeed, [](double v) { return inches_per_second(v).si(); }},
    {"ft/s", AmountKind::OfSpeed, [](double v) { return feet_per_second(v).si(); }},
    {"m/s", AmountKind::OfSpeed, [](double v) { return v; }},
    {"cm/s", AmountKind::OfSpeed, [](double v) { return v / 100.0; }},
    {"mph", AmountKind::OfSpeed, [](double v) { return miles_per_hour(v).si(); }},
    {"km/h", AmountKind::OfSpeed, [](double v) { return kilometres_per_hour(v).si(); }},
    {"g", AmountKind::OfMass, [](double v) { return grams(v).si(); }},
    {"gr", AmountKind::OfMass, [](double v) { return grains(v).si(); }},
    {"grains", AmountKind::OfMass, [](double v) { return grains(v).si(); }},
    {"gr/ft", AmountKind::OfMassPerLength, [](double v) { return grains_per_foot(v).si(); }},
    {"g/m", AmountKind::OfMassPerLength, [](double v) { return v / 1000.0; }},
    {"f", AmountKind::OfTemperature, [](double v) { return in_celsius(fahrenheit(v)); }},
    {"c", AmountKind::OfTemperature, [](double v) { return v; }},
    {"s", AmountKind::OfDuration, [](double v) { return v; }},
    {"min", AmountKind::OfDuration, [](double v) { return 60.0 * v; }},
    {"deg", AmountKind::OfAngle, [](double v) { return degrees(v).si(); }},
    {"wt", AmountKind::OfLineNumber, [](double v) { return v; }},
};

std::string lower(std::string_view text) {
  std::string out(text);
  std::ranges::transform(out, out.begin(), [](unsigned char c) { return static_cast<char>(std::tolower(c)); });
  return out;
}

bool is_gap(char c) { return std::isspace(static_cast<unsigned char>(c)) != 0 || c == ',' || c == ';'; }
bool is_digit(char c) { return std::isdigit(static_cast<unsigned char>(c)) != 0; }

class Scanner {
 public:
  explicit Scanner(std::string_view text) : left_(text) {}

  bool at_end() {
    skip_gaps();
    return left_.empty();
  }
  [[nodiscard]] bool at_number() const {
    const std::size_t sign = !left_.empty() && (left_[0] == '-' || left_[0] == '+') ? 1 : 0;
    const std::size_t point = left_.size() > sign && left_[sign] == '.' ? 1 : 0;
    return left_.size() > sign + point && is_digit(left_[sign + point]);
  }
  std::string_view word() {
    const auto end = std::ranges::find_if(left_, is_gap);
    return take(static_cast<std::size_t>(end - left_.begin()));
  }
  // "12", "12.5", "1/2", "12 1/2"; none where it is past what a double holds.
  std::optional<double> number() {
    auto value = plain_number();
    if (!value) return std::nullopt;
    if (const auto fraction = fraction_behind(*value)) return fraction;
    const std::string_view before = left_;
    skip_gaps();
    if (at_number() && left_[0] != '-') {
      const auto part = plain_number();
      const auto fraction = part ? fraction_behind(*part) : std::nullopt;
      if (fraction) return *value + *fraction;
    }
    left_ = before;
    return value;
  }
  // Whether a second number makes a range of it.
  bool range() {
    const std::string_view before = left_;
    skip_gaps();
    for (const std::string_view joint : {"to ", "-"}) {
      if (!left_.starts_with(joint)) continue;
      take(joint.size());
      skip_gaps();
      if (at_number()) return true;
    }
    left_ = before;
    return false;
  }
  // The unit behind a number; a hyphen may join them ("6-wt").
  std::string_view unit() {
    skip_gaps();
    if (left_.starts_with('-')) take(1);
    return word();
  }
  [[nodiscard]] std::size_t left() const { return left_.size(); }

 private:
  std::string_view take(std::size_t count) {
    const std::string_view taken = left_.substr(0, count);
    left_.remove_prefix(count);
    return taken;
  }
  void skip_gaps() {
    while (!left_.empty() && is_gap(left_[0])) left_.remove_prefix(1);
  }
  std::optional<double> plain_number() {
    if (left_.starts_with('+')) take(1);
    double value = 0.0;
    const auto [end, error] =
        std::from_chars(left_.data(), left_.data() + left_.size(), value, std::chars_format::fixed);
    if (error != std::errc{} || !std::isfinite(value)) return std::nullopt;
    take(static_cast<std::size_t>(end - left_.data()));
    return value;
  }
  // "1/2" where the 1 has been read.
  std::optional<double> fraction_behind(double over) {
    if (left_.size() < 2 || left_[0] != '/' || !is_digit(left_[1])) return std::nullopt;
    const std::string_view before = left_;
    take(1);
    const auto under = plain_number();
    if (under && *under > 0.0) return over / *under;
    left_ = before;
    return std::nullopt;
  }

  std::string_view left_;
};

const Unit* unit_named(std::string_view word) {
  std::string wanted = lower(word);
  if (wanted.starts_with("\xC2\xB0")) wanted.erase(0, 2);  // the degree sign
  const auto unit = std::ranges::find(kUnits, std::string_view(wanted), &Unit::word);
  return unit == std::end(kUnits) ? nullptr : &*unit;
}

void add_words(Phrase& phrase, std::string_view typed) {
  if (std::ranges::any_of(typed, is_digit)) {
    phrase.codes.emplace_back(typed);
    return;
  }
  std::string word;
  for (const char c : lower(typed) + " ") {
    const bool parts = c == '_' || c == '-' || c == ' ' || c == ':' || c == '.';
    if (!parts) word += c;
    if (parts && !word.empty()) phrase.words.push_back(std::exchange(word, {}));
  }
}

}  // namespace

Result<Phrase> phrase_of(std::string_view option, std::string_view text, std::string_view example) {
  Phrase phrase;
  Scanner scanner(text);
  const auto refused = [&](const std::string& why) {
    return tl::unexpected(Failure{
        fmt::format("{}: found \"{}\", {}; write it as \"{}\"", option, printable(text), why, example), kExitUsage});
  };
  while (!scanner.at_end()) {
    const std::size_t began = text.size() - scanner.left();
    if (!scanner.at_number()) {
      add_words(phrase, scanner.word());
      continue;
    }
    const auto from = scanner.number();
    const auto to = from && scanner.range() ? scanner.number() : from;
    if (!from || !to) return refused("a number that can't be read");
    const std::string_view word = scanner.unit();
    const auto typed = printable(text.substr(began, text.size() - scanner.left() - began));
    const Unit* unit = unit_named(word);
    if (word.empty())
      return refused(typed == text ? "a number without its unit" : fmt::format("where {} has no unit", typed));
    if (unit == nullptr)
      return refused(typed == text ? "a unit that is not known"
                                   : fmt::format("where {} has no unit that is known", typed));
    phrase.amounts.push_back({unit->kind, unit->si(*from), unit->si(*to), typed});
  }
  return phrase;
}

}  // namespace floatwright
