#include "engine/units/quantity.hpp"

#include <gtest/gtest.h>

#include <type_traits>

#include "engine/units/unit.hpp"

namespace floatwright {
namespace {

TEST(Quantity, IsNothingUntilItIsMade) { EXPECT_EQ(in_metres(Length{}), 0.0); }

TEST(Quantity, AddsAndSubtractsItsOwnKind) {
  EXPECT_DOUBLE_EQ(in_metres(metres(1.5) + metres(0.5)), 2.0);
  EXPECT_DOUBLE_EQ(in_metres(metres(1.5) - metres(0.5)), 1.0);
  EXPECT_DOUBLE_EQ(in_metres(-metres(1.5)), -1.5);
}

TEST(Quantity, ComparesBySize) {
  EXPECT_LT(feet(3.0), metres(1.0));
  EXPECT_GT(miles(1.0), feet(5279.0));
}

TEST(Quantity, MultipliesIntoTheRightKind) {
  static_assert(std::is_same_v<decltype(Length{} * Length{}), Area>);
  static_assert(std::is_same_v<decltype(Area{} * Speed{}), Discharge>);
  static_assert(std::is_same_v<decltype(Length{} / Speed{}), Duration>);
  static_assert(std::is_same_v<decltype(Mass{} / Length{}), LinearDensity>);
  EXPECT_DOUBLE_EQ(in_seconds(metres(10.0) / metres_per_second(2.0)), 5.0);
}

TEST(Quantity, DividedByItsOwnKindIsANumber) {
  static_assert(std::is_same_v<decltype(Length{} / Length{}), double>);
  EXPECT_DOUBLE_EQ(miles(3.0) / miles(2.0), 1.5);
}

TEST(RiverPlace, DiffersFromAnotherByALength) {
  static_assert(std::is_same_v<decltype(RiverPlace{} - RiverPlace{}), Length>);
  EXPECT_NEAR(in_miles(river_mile(40.2) - river_mile(28.6)), 11.6, 1e-9);
  EXPECT_NEAR(in_river_miles(upstream_of(river_mile(10.0), miles(2.5))), 12.5, 1e-9);
}

TEST(Stage, DiffersFromAnotherByALength) { EXPECT_NEAR(in_feet(stage_feet(4.5) - stage_feet(4.0)), 0.5, 1e-12); }

TEST(Angle, GoesRoundInDegreesAndRadians) { EXPECT_NEAR(in_degrees(radians(in_radians(degrees(70.0)))), 70.0, 1e-12); }

}  // namespace
}  // namespace floatwright
