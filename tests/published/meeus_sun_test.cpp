// Meeus, J. 1998, Astronomical Algorithms (2nd ed.), example 25.a (p. 165): the sun on 1992 October 13 at 0 h TD.
// Printed values, read; right ascension and declination to 0.00001 degrees. T is reckoned from the same number of days.
#include <gtest/gtest.h>

#include "engine/trip/sun.hpp"

namespace floatwright {
namespace {

constexpr Instant kOfExample25a = std::chrono::sys_days{std::chrono::year{1992} / 10 / 13};
constexpr double kPrinted = 2e-5;  // degrees: two of the last digit, as Meeus rounds between steps

TEST(Meeus25a, TrueAndApparentLongitude) {
  const SunPosition sun = sun_position(kOfExample25a);
  EXPECT_NEAR(in_degrees(sun.true_longitude), 199.90988, kPrinted);
  EXPECT_NEAR(in_degrees(sun.apparent_longitude), 199.90895, kPrinted);
}

TEST(Meeus25a, ObliquityCorrectedForTheApparentPlace) {
  EXPECT_NEAR(in_degrees(sun_position(kOfExample25a).obliquity), 23.43999, kPrinted);
}

TEST(Meeus25a, RightAscensionAndDeclination) {
  const SunPosition sun = sun_position(kOfExample25a);
  EXPECT_NEAR(in_degrees(sun.right_ascension), 198.38083, kPrinted);
  EXPECT_NEAR(in_degrees(sun.declination), -7.78507, kPrinted);
}

// 13.7110 min as published with code for the same instant, which takes the mean obliquity; the corrected one moves it by
// 0.0001 min.
TEST(Meeus25a, EquationOfTime) {
  EXPECT_NEAR(in_minutes(sun_position(kOfExample25a).equation_of_time), 13.7110, 2e-4);
}

}  // namespace
}  // namespace floatwright
