#include "adapters/in/files/unit_spelling.hpp"

#include <array>

#include "engine/units/unit.hpp"

namespace floatwright {
namespace {

struct Spelling {
  Variable variable;
  std::string_view text;  // lower case, without blanks
  UnitLine line;
};

constexpr double kSecondsPerDay = 86400.0;
constexpr double kCubicMetresPerGallon = 0.003785411784;  // US gallon, exact by definition
constexpr double kMetresPerNauticalMile = 1852.0;         // exact by definition
constexpr double kMillimetresPerInch = 1000.0 * kMetresPerInch;
constexpr UnitLine kFahrenheit{1.0 / 1.8, -32.0 / 1.8};

// The degree sign stands apart from its letter: "\xC2\xB0""f" written as one would be another sign.
const std::array kSpellings{Spelling{Variable::Flow, "cfs", {kCubicMetresPerCubicFoot}},
                            Spelling{Variable::Flow, "ft3/s", {kCubicMetresPerCubicFoot}},
                            Spelling{Variable::Flow, "ft^3/s", {kCubicMetresPerCubicFoot}},
                            Spelling{Variable::Flow, "ft\u00b3/s", {kCubicMetresPerCubicFoot}},
                            Spelling{Variable::Flow, "ft&#179;/s", {kCubicMetresPerCubicFoot}},
                            Spelling{Variable::Flow, "kcfs", {1000.0 * kCubicMetresPerCubicFoot}},
                            Spelling{Variable::Flow, "m3/s", {}},
                            Spelling{Variable::Flow, "m^3/s", {}},
                            Spelling{Variable::Flow, "m\u00b3/s", {}},
                            Spelling{Variable::Flow, "cms", {}},
                            Spelling{Variable::Flow, "l/s", {0.001}},
                            Spelling{Variable::Flow, "mgd", {1e6 * kCubicMetresPerGallon / kSecondsPerDay}},
                            Spelling{Variable::GaugeHeight, "ft", {kMetresPerFoot}},
                            Spelling{Variable::GaugeHeight, "in", {kMetresPerInch}},
                            Spelling{Variable::GaugeHeight, "m", {}},
                            Spelling{Variable::GaugeHeight, "cm", {0.01}},
                            Spelling{Variable::GaugeHeight, "mm", {0.001}},
                            Spelling{Variable::WaterTemperature, "c", {}},
                            Spelling{Variable::WaterTemperature, "degc", {}},
                            Spelling{Variable::WaterTemperature,
                                     "\u00b0"
                                     "c",
                                     {}},
                            Spelling{Variable::WaterTemperature, "f", kFahrenheit},
                            Spelling{Variable::WaterTemperature, "degf", kFahrenheit},
                            Spelling{Variable::WaterTemperature,
                                     "\u00b0"
                                     "f",
                                     kFahrenheit},
                            Spelling{Variable::Clarity, "fnu", {}},
                            Spelling{Variable::Clarity, "_fnu", {}},
                            Spelling{Variable::Clarity, "ntu", {}},
                            Spelling{Variable::Clarity, "_ntu", {}},
                            Spelling{Variable::Rain, "mm/h", {}},
                            Spelling{Variable::Rain, "in/h", {kMillimetresPerInch}},
                            Spelling{Variable::Wind, "m/s", {}},
                            Spelling{Variable::Wind, "km/h", {1.0 / 3.6}},
                            Spelling{Variable::Wind, "mph", {kMetresPerMile / 3600.0}},
                            Spelling{Variable::Wind, "kt", {kMetresPerNauticalMile / 3600.0}}};

// The temperature of air is written as that of water.
Variable written_as(Variable variable) {
  return variable == Variable::AirTemperature ? Variable::WaterTemperature : variable;
}

std::string plain(std::string_view spelling) {
  std::string out;
  for (const char c : spelling)
    if (c != ' ' && c != '\t' && c != '\r' && c != '\n')
      out += c >= 'A' && c <= 'Z' ? static_cast<char>(c - 'A' + 'a') : c;
  return out;
}

}  // namespace

std::optional<UnitLine> unit_line(Variable variable, std::string_view spelling) {
  const std::string text = plain(spelling);
  for (const Spelling& known : kSpellings)
    if (known.variable == written_as(variable) && known.text == text) return known.line;
  return std::nullopt;
}

std::vector<std::string> unit_spellings(Variable variable) {
  std::vector<std::string> out;
  for (const Spelling& known : kSpellings)
    if (known.variable == written_as(variable)) out.emplace_back(known.text);
  return out;
}

}  // namespace floatwright
