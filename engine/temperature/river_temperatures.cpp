#include "engine/temperature/river_temperatures.hpp"

#include <fmt/core.h>

#include <algorithm>

#include "engine/temperature/gauge_curve.hpp"
#include "engine/temperature/nearest_gauge.hpp"
#include "engine/units/unit.hpp"

namespace floatwright {
namespace {

constexpr double kAwayFromGauge = 0.5;  // C either way, judgement
constexpr double kPerKilometre = 0.1;   // C either way, judgement

using Curve = std::vector<PerCase<Temperature>>;

Curve widened(Curve curve, Length away) {
  if (!(away > Length{})) return curve;
  const TemperatureChange more = kelvins(kAwayFromGauge + kPerKilometre * in_kilometres(away));
  for (PerCase<Temperature>& t : curve) t = {t.low + -1.0 * more, t.middle, t.high + more};
  return curve;
}

TemperatureSource source_of(const River& river, const Reach& reach, const TemperatureGauge& from) {
  return {from.gauge, from.away, *river.gauges[from.gauge].place < reach.from, ""};
}

// Of all gauges that have no curve, the reason of the first that reports temperature at all.
std::string no_curve_because(const std::vector<Measured<Curve>>& curves, const std::vector<GaugeRecord>& records) {
  for (std::size_t g = 0; g < curves.size(); ++g)
    if (!curves[g] && !records[g].temperature.empty())
      return fmt::format("gauge {}: {}", records[g].gauge, curves[g].why_absent());
  return "no gauge reports water temperature";
}

}  // namespace

RiverTemperatures river_temperatures(const River& river, const RiverGraph& graph,
                                     const std::vector<GaugeRecord>& records, const TimeGrid& grid, Instant now) {
  std::vector<Measured<Curve>> curves;
  std::vector<bool> usable;
  for (const GaugeRecord& record : records) {
    curves.push_back(gauge_curve(record.temperature, grid, now));
    usable.push_back(curves.back().has_value());
  }
  const bool none = std::find(usable.begin(), usable.end(), true) == usable.end();

  RiverTemperatures out;
  out.grid = grid;
  for (const Reach& reach : graph.reaches) {
    const auto from = none ? Measured<TemperatureGauge>{Absent{no_curve_because(curves, records)}}
                           : temperature_gauge(river, reach, records, usable);
    if (!from) {
      out.reach.emplace_back(Absent{from.why_absent()});
      out.source.push_back({std::nullopt, {}, false, from.why_absent()});
      continue;
    }
    out.reach.emplace_back(widened(*curves[from->gauge], from->away));
    out.source.push_back(source_of(river, reach, *from));
  }
  return out;
}

Measured<PerCase<Temperature>> temperature_at(const RiverTemperatures& temperatures, std::size_t reach, Instant t) {
  const auto& curve = temperatures.reach[reach];
  if (!curve) return Absent{curve.why_absent()};
  if (curve->empty()) return Absent{"no hours were asked for"};
  const TimeGrid& grid = temperatures.grid;
  const std::size_t before = grid.index_before(t), after = std::min(before + 1, grid.count - 1);
  const double share =
      before == after ? 0.0 : std::clamp(duration(t - grid.at(before)) / duration(grid.step), 0.0, 1.0);
  const auto between = [&](Temperature a, Temperature b) { return a + share * (b - a); };
  const PerCase<Temperature>&a = (*curve)[before], &b = (*curve)[after];
  return PerCase<Temperature>{between(a.low, b.low), between(a.middle, b.middle), between(a.high, b.high)};
}

}  // namespace floatwright
