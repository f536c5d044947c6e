// Denver: UTC-7, UTC-6 from 14 March to 7 November 2027 (tzdata; United States rule of 2007, second Sunday of March).
#include "engine/wording/clock.hpp"

#include <gtest/gtest.h>

namespace floatwright {
namespace {

using namespace std::chrono_literals;
using std::chrono::sys_days;

constexpr std::chrono::year_month_day kFriday{2027y, std::chrono::May, 14d};
constexpr Instant kMidnightThere = sys_days{kFriday} + 6h;

TEST(LocalClock, RoundsToTenMinutes) {
  const LocalClock clock("America/Denver");
  EXPECT_EQ(clock.ten_minutes(kMidnightThere + 7h + 34min), "07:30");
  EXPECT_EQ(clock.ten_minutes(kMidnightThere + 7h + 35min), "07:40");
  EXPECT_EQ(clock.ten_minutes(kMidnightThere + 23h + 57min), "00:00");
}

TEST(LocalClock, RoundsDownWhatToBeReadyForAndUpWhatToWaitFor) {
  const LocalClock clock("America/Denver");
  EXPECT_EQ(clock.ten_minutes_before(kMidnightThere + 12h + 9min), "12:00");
  EXPECT_EQ(clock.ten_minutes_after(kMidnightThere + 13h + 21min), "13:30");
  EXPECT_EQ(clock.ten_minutes_after(kMidnightThere + 13h + 20min), "13:20");
}

TEST(LocalClock, GoesOverTheSpringChange) {
  const LocalClock clock("America/Denver");
  const Instant change = sys_days{std::chrono::year_month_day{2027y, std::chrono::March, 14d}} + 9h;
  EXPECT_EQ(clock.minute(change - 1min), "01:59");
  EXPECT_EQ(clock.minute(change), "03:00");
  EXPECT_EQ(clock.written(change), "2027-03-14T03:00:00-06:00");
}

TEST(LocalClock, WritesAHalfHourZone) {
  EXPECT_EQ(LocalClock("Asia/Kolkata").written(sys_days{kFriday}), "2027-05-14T05:30:00+05:30");
}

TEST(LocalClock, SaysUtcWhereItDoesNotKnowTheZone) {
  const LocalClock clock("Mars/Olympus");
  EXPECT_FALSE(clock.known());
  EXPECT_EQ(clock.ten_minutes(sys_days{kFriday} + 5h), "05:00 UTC");
}

TEST(LocalClock, NamesTheDayOfAReading) {
  const LocalClock clock("America/Denver");
  EXPECT_EQ(clock.minute_seen_from(kMidnightThere + 5h, kFriday), "05:00");
  EXPECT_EQ(clock.minute_seen_from(kMidnightThere - 4h, kFriday), "20:00 the day before");
  EXPECT_EQ(clock.minute_seen_from(kMidnightThere - 28h, kFriday), "20:00 on 12 May 2027");
}

// 14 May 2027 is a Friday, 29 February 2028 a Tuesday (perpetual calendar).
TEST(Day, IsNamed) {
  EXPECT_EQ(say_day(kFriday), "Friday 14 May 2027");
  EXPECT_EQ(head_of_day(kFriday), "FRI 14 MAY 2027");
  EXPECT_EQ(say_day({2028y, std::chrono::February, 29d}), "Tuesday 29 February 2028");
  EXPECT_EQ(say_day({2027y, std::chrono::February, 30d}), "?");
}

}  // namespace
}  // namespace floatwright
