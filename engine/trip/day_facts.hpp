#pragma once
// What the plan says of the day beside the stretches: the sun, the table of hours, readings and what they lack.
#include "engine/trip/day_plan.hpp"
#include "engine/trip/river_day.hpp"

namespace floatwright {

// Sun, hours at the put-in of the recommended stretch (else the first access), main gauge, readings, fronts, cautions.
void add_day_facts(const RiverDay& day, DayPlan& plan);

// One row a local hour, 6 to 20.
[[nodiscard]] std::vector<HourRow> hour_rows(const RiverDay& day, RiverPlace place);
// One row a step of the hours looked at.
[[nodiscard]] std::vector<FlowRow> flow_course(const RiverDay& day, RiverPlace place);

}  // namespace floatwright
