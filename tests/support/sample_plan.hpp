#pragma once
// A finished plan of the invented Lantern River, made by hand: every kind of row that a page has. Its numbers stand for
// themselves and were not computed; outputs are tested on it without the engine.
#include "engine/plan_day.hpp"

namespace floatwright::testing {

[[nodiscard]] DayInputs sample_inputs();
[[nodiscard]] DayPlan sample_plan();

// The evening of 13 May 2027 at 20:20 in Denver's time, 02:20 UTC on the 14th.
[[nodiscard]] Instant sample_now();
// Local hour and minute of 14 May 2027.
[[nodiscard]] Instant on_the_day(int hour, int minute = 0);

}  // namespace floatwright::testing
