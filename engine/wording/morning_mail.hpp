#pragma once
// The morning mail as a page. Its title is the subject; then what would stop the day, what changed since the plan before,
// five lines that a phone shows, the rods, the reach table, the pictures, the cautions in full and where it all came
// from. No greeting.
#include "engine/plan_day.hpp"
#include "engine/wording/page.hpp"

namespace floatwright {

[[nodiscard]] Page morning_mail(const DayPlan& plan, const DayInputs& in);

}  // namespace floatwright
