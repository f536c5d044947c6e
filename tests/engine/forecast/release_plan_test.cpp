#include "engine/forecast/release_plan.hpp"

#include <gmock/gmock.h>
#include <gtest/gtest.h>

#include "engine/forecast/outlook.hpp"
#include "synthetic_record.hpp"

namespace floatwright {
namespace {

using std::chrono::hours;

Dam ramping_dam() {
  Dam dam;
  dam.name = "Heron Dam";
  dam.place = river_mile(46);
  dam.ramping = true;
  dam.schedule = {{kNow - hours{100}, cubic_metres_per_second(40)}, {kNow + hours{15}, cubic_metres_per_second(50)}};
  return dam;
}
GaugeOutlook below_dam(const GaugeRecord& record, const Dam& dam) {
  return gauge_outlook({record, &dam, true, false, "America/Denver"}, grid_around(), kNow);
}

TEST(ReleasePlan, HoldsEachFlowUntilTheNextLine) {
  const Dam dam = ramping_dam();
  EXPECT_EQ(release_at(dam, kNow + hours{14}), cubic_metres_per_second(40));
  EXPECT_EQ(release_at(dam, kNow + hours{15}), cubic_metres_per_second(50));
  EXPECT_FALSE(release_at(dam, kNow - hours{101}).has_value());
}
TEST(ReleasePlan, IsTheFlowOfAGaugeCloseBelowTenPercentEitherWay) {
  const auto outlook = below_dam(record_of(99, [](int) { return 40.0; }), ramping_dam());
  EXPECT_EQ(outlook.method, FlowMethod::Schedule);
  EXPECT_NEAR(outlook.flow->middle[96 + 14].si(), 40.0, 1e-9);
  EXPECT_NEAR(outlook.flow->middle[96 + 15].si(), 50.0, 1e-9);
  EXPECT_NEAR(outlook.flow->low[96 + 15].si(), 45.0, 1e-9);
  EXPECT_NEAR(outlook.flow->high[96 + 15].si(), 55.0, 1e-9);
}
TEST(ReleasePlan, IsScaledToWhatTheGaugeReadsOfLate) {
  const auto outlook = below_dam(record_of(99, [](int) { return 42.0; }), ramping_dam());
  EXPECT_NEAR(outlook.flow->middle[96 + 20].si(), 52.5, 1e-9);
  EXPECT_THAT(outlook.notes, ::testing::Contains(::testing::HasSubstr("times 1.05")));
}
TEST(ReleasePlan, IsNotScaledByMoreThanATenth) {
  const auto outlook = below_dam(record_of(99, [](int) { return 80.0; }), ramping_dam());
  EXPECT_NEAR(outlook.flow->middle[96 + 20].si(), 55.0, 1e-9);
}

River river_with_gauge_at(double mile) {
  River river;
  river.dams = {ramping_dam()};
  GaugeSite site;
  site.id = "heron";
  site.place = river_mile(mile);
  river.gauges = {site};
  return river;
}
TEST(DamAbove, IsCloseWithinEightKilometresAndNoWaterJoining) {
  River river = river_with_gauge_at(45.2);
  EXPECT_EQ(dam_above(river, river.gauges[0]).dam, &river.dams[0]);
  EXPECT_TRUE(dam_above(river, river.gauges[0]).close);
  river.tributaries.push_back({"alder", "Alder Creek", river_mile(45.5), std::nullopt, ""});
  EXPECT_FALSE(dam_above(river, river.gauges[0]).close);
}
TEST(DamAbove, IsNoneBehindALakeOrUpstreamOrForAGaugeOffTheStem) {
  River river = river_with_gauge_at(30);
  EXPECT_NE(dam_above(river, river.gauges[0]).dam, nullptr);
  Lake lake;
  lake.from = river_mile(40);
  lake.to = river_mile(38);
  river.lakes = {lake};
  EXPECT_EQ(dam_above(river, river.gauges[0]).dam, nullptr);
  EXPECT_EQ(dam_above(river, river_with_gauge_at(47).gauges[0]).dam, nullptr);
  EXPECT_EQ(dam_above(river, GaugeSite{}).dam, nullptr);
}

}  // namespace
}  // namespace floatwright
