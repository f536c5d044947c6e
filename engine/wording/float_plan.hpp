#pragma once
// The guide's plan as a page: FLOAT (which, times), WHY, ELSE, NOT, RIG, the reach table, the hours table, IF, CARE,
// FROM.
#include "engine/plan_day.hpp"
#include "engine/wording/page.hpp"

namespace floatwright {

[[nodiscard]] Page float_plan(const DayPlan& plan, const DayInputs& in);

}  // namespace floatwright
