// Normal depth by Manning: Bedient, Huber & Vieux, Hydrology and Floodplain Analysis, examples 7-1 and 7-2.
#include <gtest/gtest.h>

#include "tests/published/channel_shapes.hpp"

namespace floatwright {
namespace {

TEST(BedientExample7_1, RectangularChannelRunsAt45Centimetres) {
  // Q 2.28 m3/s, n 0.014, S 0.006, b 2 m: the book prints 0.45 m; solved to the last digit 0.44966.
  const auto section = trapezoid(metres(2.0), 0.0, metres(1.5), 0.014);
  const double depth = normal_depth_m(section, 0.006, cubic_metres_per_second(2.28));
  EXPECT_NEAR(depth, 0.45, 0.005);
  EXPECT_NEAR(depth, 0.44966, 1e-5);
}

TEST(BedientExample7_2, TrapezoidOfOneAndAHalfDepths) {
  // Q 200 cfs, n 0.025, S 0.0006, sides 2:1, bottom 1.5 depths: 4.521 ft with the book's constant of 1.49, which is
  // 0.27 % over 1/0.3048^(1/3) and so makes the depth 0.1 % less. Area 3.5 y^2 and R 0.586 y are the book's.
  const auto section = trapezoid(feet(6.782), 2.0, feet(8.0), 0.025);
  const Discharge flow = cubic_feet_per_second(200.0);
  const double y = normal_depth_m(section, 0.0006, flow) / 0.3048;  // ft
  EXPECT_NEAR(y, 4.521, 0.01);
  const SectionWater water = water_below(section, 0.0006, surface_at(section, 0.0006, flow).value());
  EXPECT_NEAR(water.area.si() / (0.3048 * 0.3048), 3.5 * y * y, 0.02 * y * y);
  EXPECT_NEAR(water.area / water.wetted / feet(1.0), 0.586 * y, 0.003 * y);
  EXPECT_NEAR(in_feet(water.top_width), 24.867, 0.05);
}

}  // namespace
}  // namespace floatwright
