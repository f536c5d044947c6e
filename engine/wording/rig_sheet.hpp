#pragma once
// The sheet for the boat, one page: what to rig, when to be where, what to watch, where it came from, room for a pencil.
// At most eight rows; what was put together or left out is said. Without a plan the page says so and why.
#include "engine/plan_day.hpp"
#include "engine/wording/page.hpp"

namespace floatwright {

[[nodiscard]] Page rig_sheet(const DayPlan& plan, const DayInputs& in);

}  // namespace floatwright
