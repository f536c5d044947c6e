#include "engine/trip/river_day.hpp"

#include <cmath>
#include <set>

#include "engine/trip/local_time.hpp"

namespace floatwright {
namespace {

bool run_side_by_side(const Reach& a, const Reach& b) { return a.from > b.to && a.to < b.from; }

PerCase<Discharge> sum(const PerCase<Discharge>& a, const PerCase<Discharge>& b) {
  return {a.low + b.low, a.middle + b.middle, a.high + b.high};
}

}  // namespace

Measured<PerCase<Discharge>> known_flow(const RiverDay& day, std::size_t reach, Instant t) {
  const TimeGrid& grid = day.flows.grid;
  if (reach >= day.flows.known.size() || !day.flows.known[reach]) return Absent{"no gauge speaks for this reach"};
  if (grid.count == 0 || t < grid.start || t > grid.last() + grid.step) return Absent{"outside the hours looked at"};
  return flow_at(day.flows, reach, t);
}

Measured<PerCase<Discharge>> whole_flow(const RiverDay& day, std::size_t reach, Instant t) {
  auto flow = known_flow(day, reach, t);
  if (!flow.has_value()) return flow;
  // The stem (none) and the side channels; each runs through several reaches one after the other and counts once.
  std::set<std::optional<std::size_t>> threads{day.graph.reaches[reach].side_channel};
  for (std::size_t r = 0; r < day.graph.reaches.size(); ++r) {
    const Reach& beside = day.graph.reaches[r];
    if (!run_side_by_side(beside, day.graph.reaches[reach]) || !threads.insert(beside.side_channel).second) continue;
    const auto its_flow = known_flow(day, r, t);
    if (its_flow.has_value()) flow = sum(*flow, *its_flow);
  }
  return flow;
}

Measured<PerCase<Temperature>> known_temperature(const RiverDay& day, std::size_t reach, Instant t) {
  if (reach >= day.temperatures.reach.size()) return Absent{"no gauge speaks for this reach"};
  return temperature_at(day.temperatures, reach, t);
}

Measured<GeoPoint> position_near(const River& river, RiverPlace place) {
  const Access* nearest = nullptr;
  for (const Access& access : river.accesses) {
    if (!access.at) continue;
    const auto away = [&](const Access& a) { return std::abs(in_metres(a.place - place)); };
    if (nearest == nullptr || away(access) < away(*nearest)) nearest = &access;
  }
  if (nearest == nullptr) return Absent{"no access has a latitude and longitude"};
  return *nearest->at;
}

SunDay sun_over(const RiverDay& day, RiverPlace place) {
  const Instant noon = at_local(day.day, hours(12.0), day.river.time_zone);
  const Measured<GeoPoint> at = position_near(day.river, place);
  if (at.has_value()) return sun_day(*at, noon);
  const Measured<Instant> unknown = Absent{at.why_absent()};
  return {noon, unknown, unknown, unknown, unknown};
}

}  // namespace floatwright
