// US Naval Observatory, table of sunrise and sunset for Golden, Colorado, 2015, as quoted in the tests of pvlib (read
// there; place 39.742476 N, 105.1786 W from memory of those tests). Printed to the minute, Mountain Standard Time.
#include <gtest/gtest.h>

#include "engine/trip/sun.hpp"

namespace floatwright {
namespace {

constexpr GeoPoint kGolden{39.742476, -105.1786};
constexpr Period kMountainStandard = std::chrono::hours{-7};

struct Row {
  std::chrono::year_month_day day;
  int rise_hour, rise_minute, set_hour, set_minute;
};

class Golden2015 : public testing::TestWithParam<Row> {};

Instant at_standard(const Row& row, int hour, int minute) {
  return Instant{std::chrono::sys_days{row.day}} + std::chrono::hours{hour} + std::chrono::minutes{minute} - kMountainStandard;
}

// Half a minute of rounding in the table and five seconds for the place.
constexpr double kToTheMinute = 35.0;  // s

TEST_P(Golden2015, RisesAndSetsAsPrinted) {
  const SunDay sun = sun_day(kGolden, at_standard(GetParam(), 12, 0));
  const Instant rise = at_standard(GetParam(), GetParam().rise_hour, GetParam().rise_minute);
  const Instant set = at_standard(GetParam(), GetParam().set_hour, GetParam().set_minute);
  ASSERT_TRUE(sun.sunrise.has_value() && sun.sunset.has_value());
  EXPECT_NEAR(static_cast<double>((*sun.sunrise - rise).count()), 0.0, kToTheMinute);
  EXPECT_NEAR(static_cast<double>((*sun.sunset - set).count()), 0.0, kToTheMinute);
}

using std::chrono::year;
INSTANTIATE_TEST_SUITE_P(UsNavalObservatory, Golden2015,
                         testing::Values(Row{year{2015} / 1 / 1, 7, 22, 16, 47}, Row{year{2015} / 1 / 2, 7, 22, 16, 48},
                                         Row{year{2015} / 1 / 3, 7, 22, 16, 49}, Row{year{2015} / 8 / 2, 5, 0, 19, 13}));

}  // namespace
}  // namespace floatwright
