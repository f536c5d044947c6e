#include "engine/trip/gauges_ahead.hpp"

#include <gtest/gtest.h>

#include <algorithm>

#include "engine/trip/local_time.hpp"
#include "tests/engine/trip/small_river.hpp"

namespace floatwright {
namespace {

using std::chrono::year;
using std::chrono::year_month_day;

TEST(HoursLookedAt, ReachFromFourDaysBackToSixHoursAfterTheDay) {
  const TimeGrid grid = hours_looked_at(small_river(), {}, kDay, kNow);
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
  EXPECT_EQ(hours_looked_at(river, {}, kDay, kNow).step, std::chrono::minutes{15});
}

TEST(Day, IsPlannedFromTodayToTwoDaysAhead) {
  EXPECT_FALSE(why_no_day(small_river(), {}, year{2027} / 5 / 12, kNow).empty());
  EXPECT_TRUE(why_no_day(small_river(), {}, year{2027} / 5 / 13, kNow).empty());  // today on the river
  EXPECT_TRUE(why_no_day(small_river(), {}, year{2027} / 5 / 15, kNow).empty());
  EXPECT_FALSE(why_no_day(small_river(), {}, year{2027} / 5 / 16, kNow).empty());
}

GaugeRecord forecast_until(Instant until) {
  GaugeRecord record;
  record.official = OfficialForecast{"nws:FERRY", kNow, {{kNow, until}, {cubic_metres_per_second(50.0), cubic_metres_per_second(60.0)}}};
  return record;
}

TEST(Day, IsPlannedAsFarAsAnOfficialForecastReachesToTheEvening) {
  const Instant evening = at_local(year{2027} / 5 / 18, hours(20.0), small_river().time_zone);
  const std::vector<GaugeRecord> reached{forecast_until(evening)}, not_reached{forecast_until(evening - std::chrono::hours{1})};
  EXPECT_TRUE(why_no_day(small_river(), reached, year{2027} / 5 / 18, kNow).empty());
  EXPECT_NE(why_no_day(small_river(), reached, year{2027} / 5 / 19, kNow).find("2027-05-18"), std::string::npos);
  EXPECT_NE(why_no_day(small_river(), not_reached, year{2027} / 5 / 18, kNow).find("2027-05-17"), std::string::npos);
  EXPECT_EQ(hours_looked_at(small_river(), reached, year{2027} / 5 / 18, kNow).last(), evening + std::chrono::hours{10});
}

TEST(Day, OfAForecastDatedByMistakeIsNotLookedAtForYears) {
  const std::vector<GaugeRecord> records{forecast_until(kNow + std::chrono::days{20000})};
  EXPECT_EQ(last_day_known(small_river(), records, kNow), year{2027} / 5 / 28);
}

// Readings of a gauge without a forecast say nothing of the fifth day; they do of the second.
TEST(GaugesAhead, OfADayFarOffSpeakOnlyWhereAForecastReaches) {
  const River river = small_river();
  GaugeRecord record;
  for (int h = 96; h >= 0; --h) {
    record.discharge.times.push_back(kNow - std::chrono::hours{h});
    record.discharge.values.push_back(cubic_metres_per_second(50.0));
  }
  std::vector<GaugeRecord> records{record};
  records[0].official = forecast_until(at_local(year{2027} / 5 / 18, hours(21.0), river.time_zone)).official;
  records[0].official->flow.times.insert(records[0].official->flow.times.begin() + 1, kNow + std::chrono::hours{20});
  records[0].official->flow.values.insert(records[0].official->flow.values.begin() + 1, cubic_metres_per_second(50.0));
  const auto ahead = [&](const std::vector<GaugeRecord>& known, year_month_day day) {
    return outlooks_of(river, river_graph(river), {known, Tuned{}}, hours_looked_at(river, records, day, kNow), kNow)[0];
  };
  EXPECT_TRUE(ahead(records, year{2027} / 5 / 18).flow.has_value());
  EXPECT_TRUE(ahead({record}, year{2027} / 5 / 15).flow.has_value());
  const GaugeOutlook far = ahead({record}, year{2027} / 5 / 18);
  ASSERT_FALSE(far.flow.has_value());
  EXPECT_NE(far.flow.why_absent().find("reaches 2027-05-18"), std::string::npos);
  EXPECT_TRUE(far.now.has_value());
}

TEST(GaugesAhead, ByAnOfficialForecastAloneAPlanIsMadeAndSaysThatNoGaugeWasRead) {
  DayInputs in = small_day();
  in.tackle = {};  // no line is asked for
  in.records[0] = forecast_until(kNow + std::chrono::hours{60});
  in.records[0].official->flow.times.insert(in.records[0].official->flow.times.begin() + 1, kNow + std::chrono::hours{40});
  in.records[0].official->flow.values.insert(in.records[0].official->flow.values.begin() + 1, cubic_metres_per_second(55.0));
  const DayPlan plan = plan_day(in);
  EXPECT_FALSE(plan.nothing);
  EXPECT_TRUE(plan.stale);
  EXPECT_EQ(plan.missing_gauges.size(), 1u);
  ASSERT_FALSE(plan.stretches.empty());
  EXPECT_TRUE(plan.stretches.front().flow_at_launch.has_value());
  EXPECT_EQ(plan.outlooks[0].method, FlowMethod::OfficialAlone);
  const auto& cautions = plan.cautions;
  EXPECT_TRUE(std::any_of(cautions.begin(), cautions.end(), [](const Caution& c) { return c.kind == CautionKind::MissingGauge; }));
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
