#include "engine/trip/river_day.hpp"

#include <cmath>

#include "engine/trip/local_time.hpp"

namespace floatwright {

Measured<PerCase<Discharge>> known_flow(const RiverDay& day, std::size_t reach, Instant t) {
  const TimeGrid& grid = day.flows.grid;
  if (reach >= day.flows.known.size() || !day.flows.known[reach]) return Absent{"no gauge speaks for this reach"};
  if (grid.count == 0 || t < grid.start || t > grid.last() + grid.step) return Absent{"outside the hours looked at"};
  return flow_at(day.flows, reach, t);
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
