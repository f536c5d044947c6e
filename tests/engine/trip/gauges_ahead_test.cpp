#include "engine/trip/gauges_ahead.hpp"

#include <gtest/gtest.h>

#include "tests/engine/trip/small_river.hpp"

namespace floatwright {
namespace {

using std::chrono::year;

TEST(HoursLookedAt, ReachFromFourDaysBackToSixHoursAfterTheDay) {
  const TimeGrid grid = hours_looked_at(small_river(), kDay, kNow);
  EXPECT_EQ(grid.step, std::chrono::hours{1});
  EXPECT_EQ(grid.start, kNow - std::chrono::hours{96});
  EXPECT_EQ(grid.last(), local(24) + std::chrono::hours{6});
}

TEST(HoursLookedAt, AreQuartersWhereADamRamps) {
  River river = small_river();
  Dam dam;
  dam.place = river_mile(15.0);
  dam.ramping = true;
  river.dams = {dam};
  EXPECT_EQ(hours_looked_at(river, kDay, kNow).step, std::chrono::minutes{15});
}

TEST(Day, IsPlannedFromTodayToTwoDaysAhead) {
  EXPECT_FALSE(why_no_day(small_river(), year{2027} / 5 / 12, kNow).empty());
  EXPECT_TRUE(why_no_day(small_river(), year{2027} / 5 / 13, kNow).empty());  // today on the river
  EXPECT_TRUE(why_no_day(small_river(), year{2027} / 5 / 15, kNow).empty());
  EXPECT_FALSE(why_no_day(small_river(), year{2027} / 5 / 16, kNow).empty());
}

TEST(MainGauge, IsTheUpmostWithinTheStretchElseTheNearest) {
  River river = small_river();
  river.gauges = {river.gauges[0], river.gauges[0], river.gauges[0]};
  const double miles_up[] = {20.0, 8.0, 2.0};
  std::vector<GaugeOutlook> outlooks(3);
  for (std::size_t g = 0; g < 3; ++g) {
    river.gauges[g].id = std::to_string(g);
    river.gauges[g].place = river_mile(miles_up[g]);
    outlooks[g].flow = PerCase<std::vector<Discharge>>{};
  }
  PlannedStretch stretch;
  stretch.from_place = river_mile(12.0);
  stretch.to_place = river_mile(0.5);
  EXPECT_EQ(main_gauge(river, outlooks, &stretch), "1");
  outlooks[1].flow = Absent{"silent"};
  EXPECT_EQ(main_gauge(river, outlooks, &stretch), "2");
  stretch.to_place = river_mile(6.0);
  EXPECT_EQ(main_gauge(river, outlooks, &stretch), "2");  // 4 miles below; the other is 8 above
}

}  // namespace
}  // namespace floatwright
