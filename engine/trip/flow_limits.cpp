#include "engine/trip/flow_limits.hpp"

#include <algorithm>

#include "engine/trip/local_time.hpp"

namespace floatwright {
namespace {

using Broken = std::vector<BrokenLimit>;

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

void hold_to_least(const Extremes& met, LimitKind kind, const std::string& where, const std::optional<Discharge>& least,
                   Broken& broken) {
  if (least && met.lowest < *least)
    broken.push_back({.kind = kind, .where = where, .flow = met.lowest, .flow_limit = least});
}
void hold_to_most(const Extremes& met, LimitKind kind, const std::string& where, const std::optional<Discharge>& most,
                  Broken& broken) {
  if (most && met.highest > *most)
    broken.push_back({.kind = kind, .where = where, .flow = met.highest, .flow_limit = most});
}

// A hazard that is portaged is walked around at any flow above; too thin is too thin.
void add_hazard_limits(const RiverDay& day, const TimedPassage& row, Broken& broken) {
  for (const Hazard* hazard : hazards_in(day.river, row.passage.from, row.passage.to)) {
    const auto reach = day.graph.at(hazard->place).value_or(row.passage.reach);
    const auto met = extremes(day, reach, row.arrive, row.leave);
    if (!met || hazard->must_portage) continue;
    hold_to_least(*met, LimitKind::HazardFlow, hazard->what, hazard->least_flow, broken);
    hold_to_most(*met, LimitKind::HazardFlow, hazard->what, hazard->above_flow, broken);
  }
}

void add_boat_limits(const RiverDay& day, const TimedPassage& row, Broken& broken) {
  const BoatLimits& boat = day.river.boat_limits;
  auto reaches = day.graph.between(row.passage.from, row.passage.to);
  if (row.passage.spot) reaches = {row.passage.reach};
  for (const std::size_t reach : reaches) {
    if (day.graph.reaches[reach].lake) continue;
    const auto met = extremes(day, reach, row.arrive, row.leave);
    if (!met) continue;
    hold_to_least(*met, LimitKind::FlowBelowBoat, row.passage.name, boat.least_flow, broken);
    hold_to_most(*met, LimitKind::FlowAboveBoat, row.passage.name, boat.most_flow, broken);
  }
}

}  // namespace

std::vector<BrokenLimit> flow_limits(const RiverDay& day, const Timetable& times) {
  Broken broken;
  for (const TimedPassage& row : times.rows) {
    add_boat_limits(day, row, broken);
    add_hazard_limits(day, row, broken);
  }
  return broken;
}

std::optional<BrokenLimit> flow_limit(const RiverDay& day, const Timetable& times) {
  for (const TimedPassage& row : times.rows) {
    const auto broken = flow_limits(day, {.rows = {row}});
    if (!broken.empty()) return broken.front();
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
