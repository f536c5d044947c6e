#include "adapters/in/files/calendar_text.hpp"

#include <gmock/gmock.h>

namespace floatwright {
namespace {

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
