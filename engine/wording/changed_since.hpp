#pragma once
// What is different from the plan of the same day that was handed out before: said first, for whoever rigged by it.
#include "engine/wording/float_plan_parts.hpp"

namespace floatwright {

// Nothing where DayInputs::before is none. "Nothing ..." where no word of the paper would be another: hours within ten
// minutes, flow within 5 %, water within 1 C (a field sensor's and the clock's own rounding; judgement).
void add_changed_since(Page& page, const Told& told);

}  // namespace floatwright
