#include "engine/forecast/release_plan.hpp"

#include <algorithm>

namespace floatwright {
namespace {

const Dam* nearest_dam(const River& river, RiverPlace gauge) {
  const Dam* nearest = nullptr;
  for (const Dam& dam : river.dams)
    if (dam.place >= gauge && (nearest == nullptr || dam.place < nearest->place)) nearest = &dam;
  return nearest;
}

// A lake whose lower end lies between takes the wave in.
bool lake_between(const River& river, RiverPlace upper, RiverPlace lower) {
  return std::any_of(river.lakes.begin(), river.lakes.end(),
                     [&](const Lake& lake) { return lake.from && lake.to && *lake.to<upper&& * lake.from> lower; });
}

bool water_joins_or_leaves(const River& river, RiverPlace upper, RiverPlace lower) {
  const auto inside = [&](RiverPlace place) { return place <= upper && place > lower; };
  return std::any_of(river.tributaries.begin(), river.tributaries.end(),
                     [&](const Tributary& t) { return inside(t.joins_at); }) ||
         std::any_of(river.diversions.begin(), river.diversions.end(),
                     [&](const Diversion& d) { return inside(d.place); });
}

}  // namespace

std::optional<Discharge> release_at(const Dam& dam, Instant t) {
  const auto later = std::upper_bound(dam.schedule.begin(), dam.schedule.end(), t,
                                      [](Instant at, const Release& r) { return at < r.time; });
  if (later == dam.schedule.begin()) return std::nullopt;
  return (later - 1)->flow;
}

DamAbove dam_above(const River& river, const GaugeSite& gauge) {
  if (!gauge.place) return {};
  const Dam* dam = nearest_dam(river, *gauge.place);
  if (dam == nullptr || !dam->ramping || lake_between(river, dam->place, *gauge.place)) return {};
  const bool near_by = dam->place - *gauge.place <= kCloseBelowDam;
  return {dam, near_by && !water_joins_or_leaves(river, dam->place, *gauge.place)};
}

}  // namespace floatwright
