#pragma once
// Which stretch: best worth first among those that break no limit and have a line that fishes; one whose flow is known
// all along stands before one with a gap. Ruled out ones last.
#include "engine/trip/planned_stretch.hpp"

namespace floatwright {

// All stretches of the day, compared, the recommended one (if any) first with the flows at which its choices change.
[[nodiscard]] std::vector<PlannedStretch> compared_stretches(const RiverDay& day);

}  // namespace floatwright
