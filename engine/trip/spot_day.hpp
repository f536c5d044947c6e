#pragma once
// The day at one spot instead of a float: one planned "stretch" whose ends are the spot and whose reaches are its hours.
#include "engine/trip/day_plan.hpp"
#include "engine/trip/do_each.hpp"
#include "engine/trip/river_day.hpp"

namespace floatwright {

// `spot`: index into River::spots. Empty where the spot lies beyond the river's ends. Ruled out where no hour of the day
// can be fished.
[[nodiscard]] std::vector<PlannedStretch> day_at_spot(const RiverDay& day, std::size_t spot, const DoEach& do_each);

}  // namespace floatwright
