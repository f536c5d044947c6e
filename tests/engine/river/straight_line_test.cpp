#include "engine/river/straight_line.hpp"

#include <gtest/gtest.h>

namespace floatwright {
namespace {

GeoPoint at(double latitude_deg, double longitude_deg) { return {latitude_deg, longitude_deg}; }

// One degree of a great circle is pi R / 180 = 111,195.08 m.
TEST(StraightLine, AlongAMeridianAndTheEquatorIsADegreeOfAGreatCircle) {
  EXPECT_NEAR(in_metres(straight_line(at(44, -110), at(45, -110))), 111195.08, 0.01);
  EXPECT_NEAR(in_metres(straight_line(at(0, 10), at(0, 11))), 111195.08, 0.01);
}

TEST(StraightLine, GoesTheShortWayOverTheDateLine) {
  EXPECT_NEAR(in_metres(straight_line(at(0, 179.5), at(0, -179.5))), 111195.08, 0.01);
  EXPECT_NEAR(turn_east(at(0, 179.5), at(0, -179.5)), 1.0, 1e-9);
}

TEST(StraightLine, ToTheSamePointAndToTheOtherSideOfTheEarthIsFinite) {
  EXPECT_EQ(in_metres(straight_line(at(44, -110), at(44, -110))), 0.0);
  EXPECT_NEAR(in_metres(straight_line(at(44, -110), at(-44, 70))), 180 * 111195.08, 2.0);
}

}  // namespace
}  // namespace floatwright
