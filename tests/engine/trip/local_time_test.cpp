#include "engine/trip/local_time.hpp"

#include <gtest/gtest.h>

#include "engine/units/unit.hpp"

namespace floatwright {
namespace {

using std::chrono::year;
const std::string kZone = "America/Denver";

Instant utc(std::chrono::year_month_day day, int hour, int minute = 0) {
  return Instant{std::chrono::sys_days{day}} + std::chrono::hours{hour} + std::chrono::minutes{minute};
}

// Daylight saving in the United States: second Sunday of March and first of November, at 2 h (15 USC 260a, from memory).
TEST(LocalDay, HasTwentyThreeHoursWhenClocksGoForward) {
  const LocalDay day = local_day(year{2027} / 3 / 14, kZone);
  EXPECT_EQ(day.end - day.start, std::chrono::hours{23});
}

TEST(LocalDay, HasTwentyFiveHoursWhenClocksGoBack) {
  const LocalDay day = local_day(year{2026} / 11 / 1, kZone);
  EXPECT_EQ(day.end - day.start, std::chrono::hours{25});
}

TEST(LocalTime, IsWhatTheWallClockShowsOnTheDayOfTheChange) {
  const Instant seven = at_local(year{2027} / 3 / 14, hours(7.0), kZone);
  EXPECT_EQ(seven, utc(year{2027} / 3 / 14, 13));  // already six hours behind UTC
  EXPECT_DOUBLE_EQ(in_hours(time_of_day(seven, kZone)), 7.0);
}

TEST(LocalTime, OfASkippedHourIsTheInstantOfTheSkip) {
  EXPECT_EQ(at_local(year{2027} / 3 / 14, hours(2.5), kZone), utc(year{2027} / 3 / 14, 9));
}

TEST(LocalTime, OfAnHourThatComesTwiceIsTheFirst) {
  EXPECT_EQ(at_local(year{2026} / 11 / 1, hours(1.5), kZone), utc(year{2026} / 11 / 1, 7, 30));
}

TEST(DayPlanned, IsTodayBeforeTheDayTurnsAndTomorrowFromThen) {
  const auto today = year{2027} / 5 / 13;
  EXPECT_EQ(default_day(utc(today, 15, 59), kZone, hours(10.0)), today);               // 09:59 on the river
  EXPECT_EQ(default_day(utc(today, 16, 0), kZone, hours(10.0)), year{2027} / 5 / 14);  // 10:00
}

TEST(DayPlanned, FollowsTheRiversDateNotUtcs) {
  EXPECT_EQ(default_day(utc(year{2027} / 5 / 14, 2), kZone, hours(10.0)), year{2027} / 5 / 14);  // 20:00 on the 13th
}

TEST(Zone, IsKnownByItsIanaName) {
  EXPECT_TRUE(known_zone("Europe/Oslo"));
  EXPECT_FALSE(known_zone("Denver time"));
}

}  // namespace
}  // namespace floatwright
