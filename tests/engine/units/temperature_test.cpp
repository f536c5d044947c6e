#include "engine/units/temperature.hpp"

#include <gtest/gtest.h>

#include <type_traits>

namespace floatwright {
namespace {

TEST(Temperature, DiffersFromAnotherByAChange) {
  static_assert(std::is_same_v<decltype(Temperature{} - Temperature{}), TemperatureChange>);
  EXPECT_NEAR(in_kelvins(fahrenheit(70.0) - fahrenheit(61.0)), 5.0, 1e-12);
}

TEST(Temperature, MovesByAChange) { EXPECT_DOUBLE_EQ(in_celsius(celsius(10.0) + 0.5 * kelvins(3.0)), 11.5); }

TEST(Temperature, ComesBackInTheUnitItWasTypedIn) { EXPECT_NEAR(in_fahrenheit(fahrenheit(67.0)), 67.0, 1e-12); }

TEST(Temperature, ComparesByWarmth) { EXPECT_LT(celsius(18.0), fahrenheit(68.0)); }

}  // namespace
}  // namespace floatwright
