// Depths and velocities inside a reach: N. Lamouroux, Y. Souchon & E. Herouin 1995, Water Resour. Res. 31:2367 (velocity
// over the reach's mean V) and N. Lamouroux 1998, J. Hydraul. Eng. 124:224 (depth over the reach's mean H), as in their
// institute's own program for habitat (HABBY, src/stathab_mod.py). Measured on reaches of many rivers, so they say which
// part of a bed the water that is guessed for a reach nobody described would be: a lane that is fished lies deeper than
// most of the bed and is no hole, and runs about as fast as the reach does in the mean.
#include <gtest/gtest.h>

#include <algorithm>
#include <cmath>

#include "engine/water/described.hpp"

namespace floatwright {
namespace {

double normal_below(double x, double mean, double sd) { return 0.5 * std::erfc((mean - x) / (sd * std::sqrt(2.0))); }

// Share of the reach shallower than x mean depths; s from the shape 0.48 surveyed at 0.5 m of mean depth, the value that
// the checks of the program are worked out with.
double shallower(double x, double mean_depth_m) {
  const double s = std::clamp(0.48 - 0.7 * std::log(mean_depth_m / 0.5), 0.0, 1.0);
  return s * (1.0 - std::exp(-x)) + (1.0 - s) * normal_below(x, 1.0, 0.419);
}

// Share of the reach slower than u mean velocities, over ground of grain size D.
double slower(double u, double mean_velocity_m_s, double mean_depth_m, double grain_m) {
  const double froude = mean_velocity_m_s / std::sqrt(9.81 * mean_depth_m);
  const double s = std::clamp(-0.275 - 0.237 * std::log(froude) + 0.274 * grain_m / mean_depth_m, 0.0, 1.0);
  return s * 0.642 * (1.0 - std::exp(-u / 0.193)) + s * 0.358 * normal_below(u, 2.44, 1.223) +
         (1.0 - s) * normal_below(u, 1.0, 0.611);
}

TEST(Lamouroux, SharesOfTheCheckedClasses) {  // by the stated formulas, not published
  EXPECT_NEAR(shallower(0.1 / 0.4, 0.4), 0.15409, 1e-4);
  EXPECT_NEAR(shallower(0.8 / 0.4, 0.4) - shallower(0.6 / 0.4, 0.4), 0.09510, 1e-4);
  EXPECT_NEAR(slower(0.1 / 0.5, 0.5, 0.4, 0.1), 0.13486, 1e-4);
  EXPECT_NEAR(slower(0.75 / 0.5, 0.5, 0.4, 0.1) - slower(0.5 / 0.5, 0.5, 0.4, 0.1), 0.26303, 1e-4);
}

// Channels of half a metre to 2 m in the mean. With this shape the depth's law is for shallow reaches; deeper ones are
// more even (s 0: a normal law), which the bounds hold too: at 1.4 mean depths both have seven to nine tenths of
// the bed shallower, a lane that a guide would fish. A riffle's own mean depth is its middle.
TEST(Lamouroux, LaneGuessedForAReachIsDeeperThanMostOfItAndNoHole) {
  for (const double depth_m : {0.4, 0.7, 1.0, 2.0})
    for (const double speed_m_s : {0.3, 0.8, 1.2}) {
      const Discharge q = cubic_metres_per_second(30.0 * depth_m * speed_m_s);
      const Channel channel = channel_through({q, metres(30.0), metres(depth_m), mean_metres_per_second(speed_m_s)});
      const Water water = likely_water(channel, q);
      const WaterNote& note = water.notes.at(0);
      const double deeper_than = shallower(in_metres(note.depth) / depth_m, depth_m);
      const bool riffle = water.type == WaterType::Riffle;
      EXPECT_GE(deeper_than, riffle ? 0.45 : 0.70) << depth_m << " m, " << speed_m_s << " m/s";
      EXPECT_LE(deeper_than, riffle ? 0.65 : 0.90) << depth_m << " m, " << speed_m_s << " m/s";
      const double mean = 0.85 * in_metres_per_second(note.surface_speed);  // over the depth: a fact of gauging, see Rantz
      const double faster_than = slower(mean / speed_m_s, speed_m_s, depth_m, 0.05);
      EXPECT_GE(faster_than, 0.45);
      EXPECT_LE(faster_than, 0.75);
    }
}

}  // namespace
}  // namespace floatwright
