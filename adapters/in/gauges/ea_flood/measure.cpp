#include "adapters/in/gauges/ea_flood/measure.hpp"

#include <algorithm>
#include <array>

namespace floatwright {
namespace {

constexpr std::array<std::string_view, 5> kParameters{"-level-", "-flow-", "-temperature-", "-rainfall-", "-wind-"};

// Levels below a weir, of groundwater, of reservoirs are other waters than the one at the gauge.
std::optional<Variable> variable_named(std::string_view parameter, std::string_view qualifier) {
  if (parameter == "flow") return Variable::Flow;
  if (parameter == "level" && (qualifier == "stage" || qualifier == "tidal_level")) return Variable::GaugeHeight;
  if (parameter == "temperature" && qualifier.starts_with("water")) return Variable::WaterTemperature;
  if (parameter == "temperature" && qualifier == "dry_bulb") return Variable::AirTemperature;
  return std::nullopt;
}

// "15_min", "1_h": digits, an underscore, letters.
bool is_period(std::string_view token) {
  const auto low = token.find('_');
  const auto digit = [](char c) { return c >= '0' && c <= '9'; };
  return low != std::string_view::npos && low > 0 && low + 1 < token.size() &&
         std::all_of(token.begin(), token.begin() + static_cast<std::ptrdiff_t>(low), digit);
}

}  // namespace

std::optional<EaMeasure> ea_flood_measure(std::string_view name) {
  std::size_t at = std::string_view::npos, length = 0;
  for (const std::string_view parameter : kParameters)
    if (const auto found = name.find(parameter); found < at) {
      at = found;
      length = parameter.size();
    }
  if (at == std::string_view::npos || at == 0) return std::nullopt;
  const std::string_view parameter = name.substr(at + 1, length - 2);
  std::string_view rest = name.substr(at + length);
  std::string qualifier;
  std::string_view before;  // the token before: of the qualifier, or the kind of value where a period follows
  while (true) {
    const auto hyphen = rest.find('-');
    if (hyphen == std::string_view::npos) return std::nullopt;
    const std::string_view token = rest.substr(0, hyphen);
    rest.remove_prefix(hyphen + 1);
    if (is_period(token)) break;
    if (!before.empty()) qualifier += (qualifier.empty() ? "" : "-") + std::string{before};
    before = token;
  }
  const std::string unit{rest};
  return EaMeasure{.station = std::string{name.substr(0, at)},
                   .what = std::string{parameter} + (qualifier.empty() ? "" : " " + qualifier),
                   .sensor = qualifier.empty() ? unit : qualifier + ", " + unit,
                   .unit = unit,
                   .daily = false,
                   .variable = variable_named(parameter, qualifier)};
}

}  // namespace floatwright
