#include "adapters/in/gauges/ea_hydrology/measure.hpp"

#include <algorithm>
#include <array>
#include <vector>

namespace floatwright {
namespace {

constexpr std::array<std::string_view, 6> kKinds{"i", "m", "mean", "min", "max", "t"};

std::optional<Variable> variable_named(std::string_view parameter) {
  if (parameter == "flow") return Variable::Flow;
  if (parameter == "level") return Variable::GaugeHeight;
  if (parameter == "temperature" || parameter == "temp") return Variable::WaterTemperature;
  return std::nullopt;
}

bool is_period(std::string_view token) {
  return token == "subdaily" ||
         (!token.empty() && std::all_of(token.begin(), token.end(), [](char c) { return c >= '0' && c <= '9'; }));
}

std::vector<std::string_view> tokens_of(std::string_view name) {
  std::vector<std::string_view> out;
  while (true) {
    const auto hyphen = name.find('-');
    out.push_back(name.substr(0, hyphen));
    if (hyphen == std::string_view::npos) return out;
    name.remove_prefix(hyphen + 1);
  }
}

}  // namespace

std::optional<EaMeasure> ea_hydrology_measure(std::string_view name) {
  const auto tokens = tokens_of(name);
  for (std::size_t i = 2; i + 2 < tokens.size(); ++i) {
    const bool is_kind = std::find(kKinds.begin(), kKinds.end(), tokens[i]) != kKinds.end();
    if (!is_kind || !is_period(tokens[i + 1])) continue;
    const auto station_length = static_cast<std::size_t>(tokens[i - 1].data() - name.data()) - 1;
    const bool daily = tokens[i + 1] == "86400";
    return EaMeasure{.station = std::string{name.substr(0, station_length)},
                     .what = std::string{tokens[i - 1]},
                     .sensor = daily ? "daily " + std::string{tokens[i]} : "",
                     .unit = std::string{tokens[i + 2]},
                     .daily = daily,
                     .variable = variable_named(tokens[i - 1])};
  }
  return std::nullopt;
}

}  // namespace floatwright
