// Bedient, Huber & Vieux, Hydrology and Floodplain Analysis: section 4.5, a wave of 10 ft/s at a place that rises 5 ft in
// an hour slopes by dy/dx = 1/7200; equation 4-74 (Jones), Q/Q0 = sqrt(1 + (1/(S0 c)) dy/dt), Q0 the flow that is
// uniform at that depth. The rating of a section, and the depth and speed of every water, are reckoned from Q0 here:
// what is left out is the loop, and how large it is.
#include <gtest/gtest.h>

#include <cmath>

#include "channel_shapes.hpp"
#include "engine/water/channel.hpp"

namespace floatwright {
namespace {

double jones(double slope, Speed wave, Speed rise) { return std::sqrt(1.0 + (rise / wave) / slope); }

TEST(Bedient, WaveFrontOfTheWorkedRemark) {
  EXPECT_NEAR((feet(5.0) / hours(1.0)) / feet_per_second(10.0), 1.0 / 7200.0, 1e-9);
}

// The rise at which people are told to leave the bars, 0.5 ft in an hour, in channels of 0.002 (10 ft a mile) as
// surveyed and as guessed from a drainage area: the same water line carries at most 2 % more on the rise than is said,
// under the tenth that a good flow measurement is uncertain by (common practice, no source). Flat rivers loop more.
TEST(Bedient, LoopLeftOutIsSmallWhereARiverFallsTenFeetAMile) {
  const Speed rise = feet(0.5) / hours(1.0);
  const Channel surveyed = channel_of_sections({trapezoid(metres(20.0), 3.0, metres(2.0), 0.035)}, 0.002);
  const Channel guessed = channel_from_area(square_kilometres(1000.0));
  for (const double q : {10.0, 30.0, 60.0}) {
    EXPECT_LT(jones(0.002, celerity(surveyed, cubic_metres_per_second(q)), rise), 1.02) << q;
    EXPECT_LT(jones(0.002, celerity(guessed, cubic_metres_per_second(q)), rise), 1.02) << q;
  }
  EXPECT_GT(jones(0.0001, celerity(surveyed, cubic_metres_per_second(10.0)), rise), 1.1);
}

}  // namespace
}  // namespace floatwright
