#include "adapters/in/words/amounts.hpp"

#include <fmt/format.h>

#include "adapters/in/text/printable.hpp"

namespace floatwright {
namespace {

// SI, the temperature in C.
struct Between {
  double least, most;
  std::string words;
};

Result<double> amount_in(const AskedFor& asked, std::string_view text, AmountKind kind, const Between& allowed) {
  const auto phrase = phrase_of(asked.option, text, asked.example);
  if (!phrase) return tl::unexpected(phrase.error());
  const bool one = phrase->amounts.size() == 1 && phrase->words.empty() && phrase->codes.empty();
  if (!one || phrase->amounts.front().kind != kind || phrase->amounts.front().from != phrase->amounts.front().to) {
    return tl::unexpected(Failure{fmt::format("{}: found \"{}\"; give {} with its unit, such as \"{}\"", asked.option,
                                              printable(text), words_of(kind), asked.example),
                                  kExitUsage});
  }
  const double value = phrase->amounts.front().from;
  if (value >= allowed.least && value <= allowed.most) return value;
  return tl::unexpected(
      Failure{fmt::format("{}: found \"{}\"; give {}", asked.option, printable(text), allowed.words), kExitUsage});
}

std::string between(double least, double most, const char* unit, double other_least, double other_most,
                    const char* other) {
  return fmt::format("{:.3g} to {:.3g} {}, that is {:.3g} to {:.3g} {}", least, most, unit, other_least, other_most,
                     other);
}

}  // namespace

std::string_view words_of(AmountKind kind) {
  switch (kind) {
    case AmountKind::OfLength:
      return "a length";
    case AmountKind::OfSpeed:
      return "a speed";
    case AmountKind::OfMass:
      return "a mass";
    case AmountKind::OfMassPerLength:
      return "a mass per length";
    case AmountKind::OfTemperature:
      return "a temperature";
    case AmountKind::OfDuration:
      return "a time";
    case AmountKind::OfAngle:
      return "an angle";
    case AmountKind::OfLineNumber:
      return "a line number";
  }
  return "an amount";
}

Result<Length> length_in(const AskedFor& asked, std::string_view text, Allowed<Length> allowed) {
  const Between range{
      allowed.least.si(), allowed.most.si(),
      between(in_feet(allowed.least), in_feet(allowed.most), "ft", allowed.least.si(), allowed.most.si(), "m")};
  return amount_in(asked, text, AmountKind::OfLength, range).map(metres);
}

Result<Speed> speed_in(const AskedFor& asked, std::string_view text, Allowed<Speed> allowed) {
  const Between range{allowed.least.si(), allowed.most.si(),
                      between(in_feet_per_second(allowed.least), in_feet_per_second(allowed.most), "ft/s",
                              allowed.least.si(), allowed.most.si(), "m/s")};
  return amount_in(asked, text, AmountKind::OfSpeed, range).map(metres_per_second);
}

Result<Mass> mass_in(const AskedFor& asked, std::string_view text, Allowed<Mass> allowed) {
  const Between range{allowed.least.si(), allowed.most.si(),
                      between(in_grams(allowed.least), in_grams(allowed.most), "g", in_grains(allowed.least),
                              in_grains(allowed.most), "gr")};
  return amount_in(asked, text, AmountKind::OfMass, range).map(kilograms);
}

Result<Duration> duration_in(const AskedFor& asked, std::string_view text, Allowed<Duration> allowed) {
  const Between range{allowed.least.si(), allowed.most.si(),
                      fmt::format("{:.3g} to {:.3g} s", allowed.least.si(), allowed.most.si())};
  return amount_in(asked, text, AmountKind::OfDuration, range).map(seconds);
}

Result<Temperature> temperature_in(const AskedFor& asked, std::string_view text, Allowed<Temperature> allowed) {
  const double least = in_celsius(allowed.least), most = in_celsius(allowed.most);
  const Between range{least, most,
                      between(in_fahrenheit(allowed.least), in_fahrenheit(allowed.most), "F", least, most, "C")};
  return amount_in(asked, text, AmountKind::OfTemperature, range).map(celsius);
}

}  // namespace floatwright
