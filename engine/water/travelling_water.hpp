#pragma once
// How fast water goes down a river, pools and all. Dye measured on some hundred rivers takes about 1.7 times as long as
// the mean speed of a section guessed from drainage area would have it, at a third to twice the mean annual flow
// (H. E. Jobson, USGS Water-Resources Investigations Report 96-4013; tests/published/jobson_1996_travel_time_test.cpp).
// The section is right where it is measured, in a run or a riffle; the guess knows of no pool. A wave is another thing
// (engine/routing/wave_travel.hpp).
#include "engine/water/channel.hpp"

namespace floatwright {

// The mean speed of a channel that was measured, surveyed or noted; of a guessed one 0.6 of it.
[[nodiscard]] MeanSpeed travelling_speed(const Channel& channel, Discharge q);

}  // namespace floatwright
