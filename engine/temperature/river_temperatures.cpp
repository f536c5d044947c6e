#include "engine/temperature/river_temperatures.hpp"

#include <fmt/core.h>

#include <algorithm>

#include "engine/routing/mean_flow.hpp"
#include "engine/temperature/air_shift.hpp"
#include "engine/temperature/gauge_curve.hpp"
#include "engine/temperature/known_temperature.hpp"
#include "engine/temperature/nearest_gauge.hpp"
#include "engine/temperature/river_stretches.hpp"
#include "engine/units/unit.hpp"
#include "engine/water/channel.hpp"

namespace floatwright {
namespace {

constexpr double kAwayFromGauge = 0.5;                      // C either way, judgement
constexpr double kPerKilometre = 0.1, kInHeadwaters = 0.4;  // C either way, judgement
constexpr Area kHeadwaters = Area::from_si(100e6);          // drained, judgement

// Shallow water follows the air more closely.
double air_share(const TemperatureInputs& in, std::size_t gauge) {
  const auto reach = in.graph.gauge_reach[gauge];
  if (!reach || !in.flows.known[*reach]) return kAirShare;
  const Discharge q = mean_flow(in.flows.flow.middle[*reach]);
  return mean_depth(channel_of(in.river, in.graph.reaches[*reach], q), q) < kShallow ? kAirShareShallow : kAirShare;
}

std::optional<TunedTemperature> tuned_for(const TemperatureInputs& in, const GaugeRecord& record) {
  for (const TunedTemperature& tuned : in.tuned)
    if (tuned.gauge == record.gauge && tuned.station == record.station) return tuned;
  return std::nullopt;
}

GaugeCurve curve_at(const TemperatureInputs& in, std::size_t gauge) {
  const GaugeRecord& record = in.records[gauge];
  const CurveHelp help{tuned_for(in, record), in.air, in.air.empty() ? 0.0 : air_share(in, gauge),
                       in.river.time_zone};
  auto hourly = gauge_curve(record.temperature, in.grid, in.now, help);
  if (hourly || record.daily_temperature.empty()) return {std::move(hourly), false};
  return {curve_of_daily_means(record.daily_temperature, in.grid, in.now), true};
}

TemperatureCurve widened(TemperatureCurve curve, const Reach& reach, Length away) {
  if (!(away > Length{})) return curve;
  const bool headwaters = reach.drainage_area && *reach.drainage_area < kHeadwaters;
  const TemperatureChange more =
      kelvins(kAwayFromGauge + (headwaters ? kInHeadwaters : kPerKilometre) * in_kilometres(away));
  for (PerCase<Temperature>& t : curve) t = {t.low + -1.0 * more, t.middle, t.high + more};
  return curve;
}

// Of all gauges that have no curve, the reason of the first that reports temperature at all.
std::string no_curve_because(const std::vector<GaugeCurve>& curves, const std::vector<GaugeRecord>& records) {
  for (std::size_t g = 0; g < curves.size(); ++g)
    if (!curves[g].cases && !(records[g].temperature.empty() && records[g].daily_temperature.empty()))
      return fmt::format("gauge {}: {}", records[g].gauge, curves[g].cases.why_absent());
  return "no gauge reports water temperature";
}

struct ReachTemperature {
  Measured<TemperatureCurve> cases;
  TemperatureSource source;
};

ReachTemperature unknown(const std::string& why) { return {Absent{why}, {.why_unknown = why}}; }

// As the nearest gauge shows it, not delayed: the daily peak of a natural reach comes everywhere at its own hour.
ReachTemperature as_nearest(const TemperatureInputs& in, const std::vector<GaugeCurve>& curves, const Reach& reach) {
  std::vector<bool> usable;
  for (const GaugeCurve& curve : curves) usable.push_back(curve.cases.has_value());
  if (std::find(usable.begin(), usable.end(), true) == usable.end())
    return unknown(no_curve_because(curves, in.records));
  const auto from = temperature_gauge(in.river, reach, in.records, usable);
  if (!from) return unknown(from.why_absent());
  const GaugeCurve& curve = curves[from->gauge];
  const bool downstream = *in.river.gauges[from->gauge].place < reach.from;
  return {widened(*curve.cases, reach, from->away),
          {.gauge = from->gauge, .away = from->away, .downstream = downstream, .daily_means = curve.daily_means}};
}

}  // namespace

RiverTemperatures river_temperatures(const TemperatureInputs& in) {
  std::vector<GaugeCurve> curves;
  for (std::size_t g = 0; g < in.records.size(); ++g) curves.push_back(curve_at(in, g));
  const auto followed = followed_reaches(in, curves);
  RiverTemperatures out;
  out.grid = in.grid;
  for (std::size_t r = 0; r < in.graph.reaches.size(); ++r) {
    ReachTemperature t = followed[r] ? ReachTemperature{followed[r]->cases, followed[r]->source}
                                     : as_nearest(in, curves, in.graph.reaches[r]);
    out.reach.push_back(std::move(t.cases));
    out.source.push_back(std::move(t.source));
  }
  return out;
}

Measured<PerCase<Temperature>> temperature_at(const RiverTemperatures& temperatures, std::size_t reach, Instant t) {
  const auto& curve = temperatures.reach[reach];
  if (!curve) return Absent{curve.why_absent()};
  if (curve->empty()) return Absent{"no hours were asked for"};
  return cases_at(*curve, temperatures.grid, t);
}

}  // namespace floatwright
