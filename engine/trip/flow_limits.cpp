#include "engine/trip/flow_limits.hpp"

#include <algorithm>

#include "engine/trip/local_time.hpp"

namespace floatwright {
namespace {

using Broken = std::optional<BrokenLimit>;

// Lowest of the low case and highest of the high case while the boat is in the row.
struct Extremes {
  Discharge lowest, highest;
};

std::optional<Extremes> extremes(const RiverDay& day, std::size_t reach, Instant from, Instant to) {
  std::optional<Extremes> found;
  const auto meet = [&](Instant t) {
    const auto flow = known_flow(day, reach, t);
    if (!flow.has_value()) return;
    if (!found) found = Extremes{flow->low, flow->high};
    found->lowest = std::min(found->lowest, flow->low);
    found->highest = std::max(found->highest, flow->high);
  };
  for (Instant t = from; t < to; t += day.flows.grid.step) meet(t);
  meet(to);
  return found;
}

Broken too_little(LimitKind kind, const std::string& where, Discharge flow, const std::optional<Discharge>& least) {
  if (!least || flow >= *least) return std::nullopt;
  return BrokenLimit{.kind = kind, .where = where, .flow = flow, .flow_limit = least};
}
Broken too_much(LimitKind kind, const std::string& where, Discharge flow, const std::optional<Discharge>& most) {
  if (!most || flow <= *most) return std::nullopt;
  return BrokenLimit{.kind = kind, .where = where, .flow = flow, .flow_limit = most};
}

// A hazard that is portaged is walked around at any flow above; too thin is too thin.
Broken hazard_limit(const RiverDay& day, const TimedPassage& row) {
  for (const Hazard* hazard : hazards_in(day.river, row.passage.from, row.passage.to)) {
    const auto reach = day.graph.at(hazard->place).value_or(row.passage.reach);
    const auto met = extremes(day, reach, row.arrive, row.leave);
    if (!met || hazard->must_portage) continue;
    if (auto thin = too_little(LimitKind::HazardFlow, hazard->what, met->lowest, hazard->least_flow)) return thin;
    if (auto high = too_much(LimitKind::HazardFlow, hazard->what, met->highest, hazard->above_flow)) return high;
  }
  return std::nullopt;
}

Broken boat_limit(const RiverDay& day, const TimedPassage& row) {
  const BoatLimits& boat = day.river.boat_limits;
  auto reaches = day.graph.between(row.passage.from, row.passage.to);
  if (row.passage.spot) reaches = {row.passage.reach};
  for (const std::size_t reach : reaches) {
    if (day.graph.reaches[reach].lake) continue;
    const auto met = extremes(day, reach, row.arrive, row.leave);
    if (!met) continue;
    const std::string& where = row.passage.name;
    if (auto thin = too_little(LimitKind::FlowBelowBoat, where, met->lowest, boat.least_flow)) return thin;
    if (auto high = too_much(LimitKind::FlowAboveBoat, where, met->highest, boat.most_flow)) return high;
  }
  return std::nullopt;
}

}  // namespace

std::optional<BrokenLimit> flow_limit(const RiverDay& day, const Timetable& times) {
  for (const TimedPassage& row : times.rows) {
    if (auto boat = boat_limit(day, row)) return boat;
    if (auto hazard = hazard_limit(day, row)) return hazard;
  }
  return std::nullopt;
}

std::vector<const Hazard*> hazards_in(const River& river, RiverPlace from, RiverPlace to) {
  std::vector<const Hazard*> found;
  for (const Hazard& hazard : river.hazards) {
    if (lies_between(hazard.place, from, to)) found.push_back(&hazard);
  }
  std::ranges::stable_sort(found, std::ranges::greater{}, &Hazard::place);
  return found;
}

Instant at_latest_off(const RiverDay& day) { return at_local(day.day, day.settings.latest_off, day.river.time_zone); }

Measured<Instant> last_light(const SunDay& sun) {
  return sun.sunset.has_value() || !sun.civil_dusk.has_value() ? sun.sunset : sun.civil_dusk;
}

}  // namespace floatwright
