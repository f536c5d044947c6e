// R. D. Jarrett, Hydraulics of high-gradient streams, J. Hydraul. Eng. 110(11), 1984: n = 0.39 S^0.38 R^-0.16 and
// V = 3.81 R^0.83 S^0.12 (ft, s). From memory; that the two agree is the check: 1.486/n R^(2/3) S^(1/2) is the second.
#include <gtest/gtest.h>

#include <array>

#include "tests/published/channel_shapes.hpp"

namespace floatwright {
namespace {

TEST(Jarrett1984, RoughnessOfSteepStreams) {
  EXPECT_NEAR(jarrett_roughness(0.01, feet(1.0)), 0.06777, 1e-5);
  EXPECT_NEAR(jarrett_roughness(0.02, feet(2.0)), 0.07894, 1e-5);
  EXPECT_NEAR(jarrett_roughness(0.005, feet(3.28)), 0.04307, 1e-5);
}

TEST(Jarrett1984, SpeedAgreesWithItsOwnFormula) {
  // A wide channel, so that R is the depth to a thousandth. Within 0.6 %: 3.81 R^0.83 rounds 1.486/0.39 R^(2/3 + 0.16).
  const auto section = trapezoid(feet(4000.0), 0.0, feet(5.0), {});
  for (const auto& [slope, depth, speed] : {std::array{0.01, 1.0, 2.1924}, {0.02, 2.0, 4.2355}, {0.005, 3.28, 5.4073}}) {
    EXPECT_NEAR(in_feet_per_second(water_below(section, slope, feet(depth)).mean_speed()), speed, 0.006 * speed);
  }
}

TEST(Jarrett1984, IsHeldAtTheEndsOfItsRange) {
  EXPECT_DOUBLE_EQ(jarrett_roughness(0.0005, feet(2.0)), jarrett_roughness(0.002, feet(2.0)));
  EXPECT_DOUBLE_EQ(jarrett_roughness(0.2, feet(2.0)), jarrett_roughness(0.04, feet(2.0)));
  EXPECT_DOUBLE_EQ(jarrett_roughness(0.01, feet(20.0)), jarrett_roughness(0.01, feet(7.0)));
  EXPECT_DOUBLE_EQ(jarrett_roughness(0.01, feet(0.1)), jarrett_roughness(0.01, feet(0.5)));
}

}  // namespace
}  // namespace floatwright
