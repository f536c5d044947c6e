#pragma once
// The page that stays ashore with whoever would call for help: who is on the water, where, until when, and when to call.
#include "engine/plan_day.hpp"
#include "engine/wording/page.hpp"

namespace floatwright {

[[nodiscard]] Page left_ashore(const DayPlan& plan, const DayInputs& in);

}  // namespace floatwright
