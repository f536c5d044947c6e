#pragma once
// The pictures of one boat's day by the name that a page's Figure has: "hydrograph", the flow at the put-in;
// "line", the line fished longest over the bed. What the plan does not know is not drawn: its name is missing then.
#include "adapters/out/figure/drawing.hpp"
#include "engine/plan_day.hpp"

namespace floatwright {

// Each drawing is as wide as asked, in points, and never under 240; words are 13 points, in narrow ones 11.
[[nodiscard]] Drawings day_drawings(const DayPlan& plan, const DayInputs& in, double width);

}  // namespace floatwright
