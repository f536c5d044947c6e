#include "adapters/in/files/calendar_text.hpp"

#include <gmock/gmock.h>

namespace floatwright {
namespace {

using std::chrono::sys_days;
using namespace std::chrono_literals;

// RFC 3339 section 5.8: 1996-12-19T16:39:57-08:00 is 1996-12-20T00:39:57Z.
TEST(CalendarText, ReadsTheInstantOfRfc3339) {
  const Instant expected = sys_days{1996y / 12 / 20} + 39min + 57s;
  EXPECT_EQ(instant_in("1996-12-19T16:39:57-08:00"), expected);
  EXPECT_EQ(instant_in("1996-12-20T00:39:57Z"), expected);
  EXPECT_EQ(instant_in("1937-01-01T12:00+00:20"), Instant{sys_days{1937y / 1 / 1} + 11h + 40min});
}

TEST(CalendarText, RefusesInstantsWithoutOffsetOrOffTheCalendar) {
  for (const char* wrong :
       {"2027-05-14T09:00", "2027-05-14", "2027-02-29T09:00Z", "2027-13-01T09:00Z", "2027-05-14T24:00Z",
        "2027-05-14T09:60Z", "2027-05-14 09:00Z", "2027-05-14T09:00-6", "2027-05-14T09:00-06:00x", "T09:00Z", "",
        "2027-05-14T", "2027-05-14TZ", "2027-05-14T09:00+99:00"}) {
    EXPECT_FALSE(instant_in(wrong)) << wrong;
  }
}

TEST(CalendarText, KnowsWhichDaysThereAre) {
  EXPECT_TRUE(date_in("2028-02-29"));
  EXPECT_FALSE(date_in("2027-02-29"));
  EXPECT_FALSE(date_in("2027-5-14"));
  EXPECT_FALSE(date_in("14.05.2027"));
  EXPECT_TRUE(month_day_in("02-29"));
  EXPECT_FALSE(month_day_in("02-30"));
  EXPECT_FALSE(month_day_in("00-10"));
}

TEST(CalendarText, ReadsTimesOfDay) {
  EXPECT_EQ(in_minutes(*time_of_day_in("07:30")), 450.0);
  EXPECT_EQ(in_hours(*time_of_day_in("24:00")), 24.0);
  for (const char* wrong : {"7:30", "24:01", "07:60", "07:30:00", "0730", "07:3x", ""})
    EXPECT_FALSE(time_of_day_in(wrong)) << wrong;
}

}  // namespace
}  // namespace floatwright
