// NIST Special Publication 811, Appendix B: factors that are exact by definition (international foot and pound). From
// memory; the arithmetic between them was reproduced.
#include <gtest/gtest.h>

#include "engine/units/instant.hpp"
#include "engine/units/unit.hpp"

namespace floatwright {
namespace {

TEST(NistSp811, LengthsAndPlaces) {
  EXPECT_DOUBLE_EQ(in_metres(feet(1.0)), 0.3048);
  EXPECT_DOUBLE_EQ(in_metres(inches(1.0)), 0.0254);
  EXPECT_DOUBLE_EQ(in_metres(miles(1.0)), 1609.344);
  EXPECT_DOUBLE_EQ(river_mile(1.0).si(), 1609.344);
  EXPECT_DOUBLE_EQ(in_feet(stage_feet(7.25)), 7.25);
  EXPECT_DOUBLE_EQ(in_inches(feet(1.0)), 12.0);
  EXPECT_DOUBLE_EQ(in_feet(miles(1.0)), 5280.0);
}

TEST(NistSp811, AreasAndDischarges) {
  EXPECT_DOUBLE_EQ(in_square_metres(square_miles(1.0)), 2.589988110336e6);
  EXPECT_DOUBLE_EQ(in_cubic_metres_per_second(cubic_feet_per_second(1.0)), 0.028316846592);
  EXPECT_NEAR(in_cubic_feet_per_second(cubic_metres_per_second(1.0)), 35.3146667214886, 1e-12);
}

TEST(NistSp811, Speeds) {
  EXPECT_DOUBLE_EQ(in_metres_per_second(feet_per_second(1.0)), 0.3048);
  EXPECT_DOUBLE_EQ(in_metres_per_second(miles_per_hour(1.0)), 0.44704);
  EXPECT_DOUBLE_EQ(in_metres_per_second(inches_per_second(10.0)), 0.254);
  EXPECT_DOUBLE_EQ(in_metres_per_second(kilometres_per_hour(3.6)), 1.0);
  EXPECT_DOUBLE_EQ(in_feet_per_second(surface_feet_per_second(3.5)), 3.5);
}

TEST(NistSp811, Masses) {
  EXPECT_DOUBLE_EQ(in_kilograms(grains(1.0)), 64.79891e-6);
  EXPECT_NEAR(in_grains(grams(1.0)), 15.4323583529, 1e-10);
  EXPECT_NEAR(in_grains(kilograms(kKilogramsPerPound)), 7000.0, 1e-9);
  EXPECT_NEAR(in_kilograms_per_metre(grains_per_foot(1.0)), 64.79891e-6 / 0.3048, 1e-18);
}

TEST(NistSp811, Temperatures) {
  EXPECT_NEAR(in_celsius(fahrenheit(73.0)), 22.7778, 5e-5);
  EXPECT_NEAR(in_celsius(fahrenheit(60.0)), 15.5556, 5e-5);
  EXPECT_NEAR(in_celsius(fahrenheit(67.0)), 19.4444, 5e-5);
  EXPECT_DOUBLE_EQ(in_fahrenheit(celsius(100.0)), 212.0);
  EXPECT_DOUBLE_EQ(in_celsius(fahrenheit(-40.0)), -40.0);
}

TEST(NistSp811, StandardGravity) { EXPECT_DOUBLE_EQ(kStandardGravity, 9.80665); }

// Derived there from the foot and the pound.
TEST(NistSp811, ProductsOfUnits) {
  EXPECT_DOUBLE_EQ((feet(1.0) * feet_per_second(1.0)).si(), 0.09290304);                                  // ft2/s
  EXPECT_NEAR((cubic_feet_per_second(1.0) * hours(24.0)).si() / 1233.48183754752, 1.98347107438, 1e-11);  // acre-ft
}

}  // namespace
}  // namespace floatwright
