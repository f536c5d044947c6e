#pragma once
// One row of a plan, before any line is chosen: where, when, flow, temperature, the waters as met.
#include "engine/trip/day_plan.hpp"
#include "engine/trip/timetable.hpp"

namespace floatwright {

// Fishing ends at `stop_by` (heat), if there is one. The waters are left to the caller.
[[nodiscard]] Duration fishing_in(const TimedPassage& row, const std::optional<Instant>& stop_by);

[[nodiscard]] PlannedReach planned_reach(const RiverDay& day, const TimedPassage& row);

// A sentence; empty where it is fished. `fishing`: of its row.
[[nodiscard]] std::string why_not_fished(const PlannedReach& reach, Duration fishing);

}  // namespace floatwright
