#include "engine/trip/sun.hpp"

#include <gtest/gtest.h>

namespace floatwright {
namespace {

using std::chrono::year;
constexpr Instant noon_utc(std::chrono::year_month_day day) { return Instant{std::chrono::sys_days{day}} + std::chrono::hours{12}; }

TEST(Sun, StandsOnTheHorizonLessRefractionAtSunrise) {
  const GeoPoint at{45.1, -111.2};
  const SunDay sun = sun_day(at, noon_utc(year{2027} / 5 / 14) + std::chrono::hours{7});
  ASSERT_TRUE(sun.sunrise.has_value() && sun.civil_dusk.has_value());
  EXPECT_NEAR(in_degrees(sun_elevation(at, *sun.sunrise)), -0.833, 0.005);  // degrees; a second is 0.004
  EXPECT_NEAR(in_degrees(sun_elevation(at, *sun.civil_dusk)), -6.0, 0.005);
}

TEST(Sun, IsOverheadOnTheEquatorAtNoonOfAnEquinox) {
  const Instant noon = sun_day({0.0, 0.0}, noon_utc(year{2026} / 3 / 20)).noon;
  EXPECT_NEAR(in_degrees(sun_elevation({0.0, 0.0}, noon)), 90.0, 0.3);  // declination moves 0.4 degrees a day then
}

TEST(Sun, BelongsToTheDayAskedForOnBothSidesOfTheDateLine) {
  const SunDay east = sun_day({-43.0, 171.0}, noon_utc(year{2027} / 1 / 10) - std::chrono::hours{13});
  const SunDay west = sun_day({60.0, -165.0}, noon_utc(year{2027} / 5 / 10) + std::chrono::hours{8});
  EXPECT_LT(std::chrono::abs(east.noon - (noon_utc(year{2027} / 1 / 10) - std::chrono::hours{13})), std::chrono::hours{2});
  EXPECT_LT(std::chrono::abs(west.noon - (noon_utc(year{2027} / 5 / 10) + std::chrono::hours{8})), std::chrono::hours{4});
  ASSERT_TRUE(east.sunrise.has_value() && west.sunset.has_value());
  EXPECT_LT(*east.sunrise, east.noon);
  EXPECT_GT(*west.sunset, west.noon);
}

TEST(Sun, NeitherRisesNorSetsBeyondThePolarCircle) {
  const SunDay winter = sun_day({70.0, 25.0}, noon_utc(year{2026} / 12 / 21));
  EXPECT_FALSE(winter.sunrise.has_value());
  EXPECT_EQ(winter.sunrise.why_absent(), "no sun that day");
  EXPECT_TRUE(winter.civil_dawn.has_value());  // 70 N is dusk, not night, at noon of midwinter
  const SunDay summer = sun_day({70.0, 25.0}, noon_utc(year{2026} / 6 / 21));
  EXPECT_FALSE(summer.sunset.has_value());
  EXPECT_EQ(summer.sunset.why_absent(), "sun all day");
}

}  // namespace
}  // namespace floatwright
