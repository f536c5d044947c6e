#include "engine/temperature/known_temperature.hpp"

#include <algorithm>

namespace floatwright {

std::optional<Temperature> KnownTemperature::at(Instant t) const {
  if (const auto seen = value_at(observed, t)) return *seen;
  if (t < grid.start && !observed.empty()) return std::nullopt;
  return cases_at(cases, grid, t).middle;
}

PerCase<Temperature> cases_at(const TemperatureCurve& curve, const TimeGrid& grid, Instant t) {
  const std::size_t before = grid.index_before(t), after = std::min(before + 1, grid.count - 1);
  const double share =
      before == after ? 0.0 : std::clamp(duration(t - grid.at(before)) / duration(grid.step), 0.0, 1.0);
  const auto between = [&](Temperature a, Temperature b) { return a + share * (b - a); };
  const PerCase<Temperature>&a = curve[before], &b = curve[after];
  return {between(a.low, b.low), between(a.middle, b.middle), between(a.high, b.high)};
}

}  // namespace floatwright
