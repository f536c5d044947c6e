#pragma once
// The hard limit that rules a stretch out, with its numbers: "longer than the 14.0 mi you set".
#include <string>

#include "engine/trip/day_plan.hpp"
#include "engine/wording/clock.hpp"

namespace floatwright {

// From the limit's numbers; where it has none, the plan's own words.
[[nodiscard]] std::string say_why_not(const PlannedStretch& stretch, const River& river, const LocalClock& clock,
                                      UnitSystem units);

}  // namespace floatwright
