#include "engine/temperature/river_stretches.hpp"

#include <algorithm>

#include "engine/temperature/release_temperature.hpp"
#include "engine/temperature/stretch_temperatures.hpp"

namespace floatwright {
namespace {

struct WarmPlace {
  RiverPlace place;
  std::optional<std::size_t> gauge{}, dam{};  // one of the two
  KnownTemperature known{};
};

bool has_hours(const GaugeCurve& curve) { return curve.cases && !curve.daily_means; }

KnownTemperature known_at_gauge(const TemperatureInputs& in, const GaugeCurve& curve, std::size_t gauge) {
  return {up_to(in.records[gauge].temperature, in.now), in.grid, *curve.cases};
}

KnownTemperature known_release(const TemperatureInputs& in, Temperature release) {
  const PerCase<Temperature> cases{release + -1.0 * kReleaseSwing, release, release + kReleaseSwing};
  return {{}, in.grid, TemperatureCurve(in.grid.count, cases)};
}

// Downstream.
std::vector<WarmPlace> warm_places(const TemperatureInputs& in, const std::vector<GaugeCurve>& curves) {
  std::vector<WarmPlace> places;
  for (std::size_t g = 0; g < curves.size(); ++g)
    if (has_hours(curves[g]) && in.river.gauges[g].place)
      places.push_back({*in.river.gauges[g].place, g, {}, known_at_gauge(in, curves[g], g)});
  for (std::size_t d = 0; d < in.river.dams.size(); ++d)
    if (const auto release = release_temperature(in.river, in.river.dams[d], in.now))
      places.push_back({in.river.dams[d].place, {}, d, known_release(in, *release)});
  std::stable_sort(places.begin(), places.end(), [](const auto& a, const auto& b) { return a.place > b.place; });
  return places;
}

JoiningTemperature joining_water(const TemperatureInputs& in, const std::vector<GaugeCurve>& curves) {
  std::vector<KnownTemperature> by_tributary(in.river.tributaries.size());
  for (std::size_t g = 0; g < curves.size(); ++g)
    for (std::size_t t = 0; t < by_tributary.size(); ++t)
      if (has_hours(curves[g]) && in.river.tributaries[t].gauge == in.river.gauges[g].id)
        by_tributary[t] = known_at_gauge(in, curves[g], g);
  return [by_tributary](std::size_t tributary, Instant t) {
    const KnownTemperature& water = by_tributary[tributary];  // known: water_path asked
    return water.at(t).value_or(water.observed.values.front());
  };
}

// The branch beside a stem reach has that one's water.
bool beside(const Reach& branch, const Reach& stem) {
  return branch.side_channel && branch.from <= stem.from && branch.to >= stem.to;
}

void take(std::vector<std::optional<FollowedReach>>& out, const RiverGraph& graph, std::size_t stem,
          const FollowedReach& followed) {
  out[stem] = followed;
  for (std::size_t r = 0; r < graph.reaches.size(); ++r)
    if (beside(graph.reaches[r], graph.reaches[stem])) out[r] = followed;
}

}  // namespace

std::vector<std::optional<FollowedReach>> followed_reaches(const TemperatureInputs& in,
                                                           const std::vector<GaugeCurve>& curves) {
  std::vector<std::optional<FollowedReach>> out(in.graph.reaches.size());
  if (in.grid.count == 0) return out;
  PathInputs paths{in.river, in.graph, in.flows, in.records, {}};
  for (const GaugeCurve& curve : curves) paths.warm_known.push_back(has_hours(curve));
  const auto places = warm_places(in, curves);
  for (std::size_t i = 1; i < places.size(); ++i) {
    const WarmPlace &top = places[i - 1], &bottom = places[i];
    const auto path = bottom.gauge ? water_path(paths, top.place, bottom.place) : Measured<WaterPath>{Absent{}};
    if (!path) continue;
    const auto cases = stretch_temperatures({*path, top.known, bottom.known, joining_water(in, curves)});
    if (!cases) continue;
    for (std::size_t p = 0; p < path->pieces.size(); ++p)
      take(out, in.graph, path->pieces[p].reach,
           {{.gauge = top.gauge, .dam = top.dam, .down_to = bottom.gauge}, (*cases)[p]});
  }
  return out;
}

}  // namespace floatwright
