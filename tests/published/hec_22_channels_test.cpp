// US Federal Highway Administration, HEC-22 (3rd edition, 2009), examples 5-1 and 5-2, as reproduced in the public
// documents of a storm water model.
#include <gtest/gtest.h>

#include "tests/published/channel_shapes.hpp"

namespace floatwright {
namespace {

TEST(Hec22Example5_1, WhatATrapezoidCarries) {
  // B 0.8 m, sides 3:1, d 0.5 m, S 0.01, n 0.030: A 1.15 m2, P 3.96 m, R 0.29 m; Q 1.6804 m3/s and V 1.4612 m/s.
  const auto section = trapezoid(metres(0.8), 3.0, metres(1.0), 0.030);
  const SectionWater water = water_below(section, 0.01, metres(0.5));
  EXPECT_NEAR(water.area.si(), 1.15, 1e-9);
  EXPECT_NEAR(in_metres(water.wetted), 3.96, 0.005);
  EXPECT_NEAR(in_metres(water.area / water.wetted), 0.29, 0.005);
  EXPECT_NEAR(water.flow.si(), 1.6804, 1e-4);
  EXPECT_NEAR(water.mean_speed().si(), 1.4612, 1e-4);
}

TEST(Hec22Example5_2, DepthOfATrapezoid) {
  // B 0.9 m, sides 3:1, S 0.01, n 0.030, Q 0.80 m3/s: d 0.34 m read from a chart, shear 33.4 Pa with it.
  const auto section = trapezoid(metres(0.9), 3.0, metres(1.0), 0.030);
  const double depth = normal_depth_m(section, 0.01, cubic_metres_per_second(0.80));
  EXPECT_NEAR(depth, 0.34, 0.01);
  EXPECT_NEAR(9810.0 * depth * 0.01, 33.4, 1.0);
}

}  // namespace
}  // namespace floatwright
