#include "engine/trip/season.hpp"

#include <gtest/gtest.h>

namespace floatwright {
namespace {

using std::chrono::year;

TEST(Season, HoldsBothItsEnds) {
  const Season spring{{4, 1}, {5, 31}};
  EXPECT_TRUE(in_season(spring, year{2027} / 4 / 1));
  EXPECT_TRUE(in_season(spring, year{2027} / 5 / 31));
  EXPECT_FALSE(in_season(spring, year{2027} / 6 / 1));
}

TEST(Season, MayRunOverTheNewYear) {
  const Season winter{{11, 15}, {3, 1}};
  EXPECT_TRUE(in_season(winter, year{2027} / 1 / 10));
  EXPECT_TRUE(in_season(winter, year{2027} / 12 / 10));
  EXPECT_FALSE(in_season(winter, year{2027} / 7 / 10));
}

TEST(Hours, MayRunOverMidnight) {
  const HoursOfDay night{hours(22.0), hours(5.0)};
  EXPECT_TRUE(in_hours(night, hours(23.0)));
  EXPECT_TRUE(in_hours(night, hours(4.5)));
  EXPECT_FALSE(in_hours(night, hours(12.0)));
}

TEST(Hours, AreMetByATimeThatReachesIntoThem) {
  const HoursOfDay afternoon{hours(14.0), hours(24.0)};
  EXPECT_TRUE(meet_hours(afternoon, hours(13.0), hours(14.5)));
  EXPECT_TRUE(meet_hours({hours(9.0), hours(9.5)}, hours(8.0), hours(11.0)));  // wholly inside the time
  EXPECT_FALSE(meet_hours(afternoon, hours(8.0), hours(13.5)));
}

}  // namespace
}  // namespace floatwright
