// What must not be said: past a dam, past a large diversion, too far in area or distance.
#include <gmock/gmock.h>
#include <gtest/gtest.h>

#include "small_river.hpp"

namespace floatwright {
namespace {

using ::testing::Contains;
using ::testing::Each;
using ::testing::HasSubstr;

TEST(UnknownFlows, AreAllWhereNoGaugeSpeaks) {
  const Routed run = run_of(bare_river(), {silent("heron"), silent("ferry")});
  EXPECT_THAT(run.flows.known, Each(false));
  for (const FlowSource& source : run.flows.source) EXPECT_THAT(source.why_unknown, HasSubstr("no gauge speaks"));
}
TEST(UnknownFlows, LieAboveADamWithoutAGauge) {
  River river = bare_river();
  river.accesses.push_back(access_at("above", 48));
  river.dams = {heron_dam()};
  const Routed run = run_of(river, {outlook_of("heron", steady(50)), outlook_of("ferry", steady(52))});
  EXPECT_FALSE(run.flows.known[run.at(47)]);
  EXPECT_TRUE(run.flows.known[run.at(45.8)]);
  EXPECT_THAT(run.flows.source[run.at(47)].why_unknown, HasSubstr("no gauge above the dam"));
}
TEST(UnknownFlows, LieBelowADamWhoseReleasesNobodyTyped) {
  River river = bare_river();
  Dam lower = heron_dam();
  lower.place = river_mile(27);
  river.dams = {lower};
  const Routed run = run_of(river, {outlook_of("heron", steady(50)), outlook_of("ferry", steady(52))});
  EXPECT_TRUE(run.flows.known[run.at(28)]);
  EXPECT_FALSE(run.flows.known[run.at(25)]);
}
TEST(UnknownFlows, GiveWayToTypedReleasesWhereTheGaugeIsSilent) {
  River river = bare_river(0, 0);
  river.dams = {heron_dam({{kNow - std::chrono::hours{200}, cubic_metres_per_second(40)}})};
  const Routed run = run_of(river, {silent("heron"), silent("ferry")});
  ASSERT_TRUE(run.flows.known[run.at(42)]);
  EXPECT_EQ(run.flows.source[run.at(42)].origin, FlowOrigin::Below);
  EXPECT_EQ(run.flows.source[run.at(42)].from.dam, 0u);
  const auto flow = flow_at(run.flows, run.at(42), kNow + std::chrono::hours{20});
  EXPECT_NEAR(flow.middle.si(), 40.0, 1e-9);
  EXPECT_NEAR(flow.low.si(), 36.0, 0.05);
}
TEST(UnknownFlows, LiePastADiversionOfOverAFifthOfTheFlowButNotPastASmallOne) {
  River river = bare_river(0, 0);
  river.diversions = {{"ditch", "Quarry ditch", river_mile(26), cubic_metres_per_second(15), std::nullopt}};
  const std::vector<GaugeOutlook> outlooks{outlook_of("heron", steady(50)), outlook_of("ferry", steady(50))};
  Routed run = run_of(river, outlooks);
  EXPECT_TRUE(run.flows.known[run.at(27)]);
  EXPECT_FALSE(run.flows.known[run.at(25)]);
  EXPECT_THAT(run.flows.source[run.at(25)].why_unknown, HasSubstr("Quarry ditch takes more than 20 %"));
  river.diversions[0].flow = cubic_metres_per_second(5);
  run = run_of(river, outlooks);
  EXPECT_TRUE(run.flows.known[run.at(25)]);
  EXPECT_NEAR(run.middle(25, 0), 45.0, 1e-9);
  EXPECT_THAT(run.flows.doubts, Contains(HasSubstr("Quarry ditch is counted as typed")));
}
TEST(UnknownFlows, LieFarPastTheLastGaugeWhereNoAreasAreTyped) {
  River river = bare_river(0, 0);
  river.accesses.push_back(access_at("mouth", 1.0));
  const Routed run = run_of(river, {outlook_of("heron", steady(50)), outlook_of("ferry", steady(50))});
  EXPECT_TRUE(run.flows.known[run.at(25)]);
  EXPECT_FALSE(run.flows.known[run.at(2)]);  // its lower end is 27.9 mi, 45 km, below the gauge
  EXPECT_NEAR(in_miles(run.flows.source[run.at(2)].away), 27.9, 0.01);
  EXPECT_THAT(run.flows.source[run.at(2)].why_unknown, HasSubstr("gauge ferry is too far away"));
}
TEST(UnknownFlows, EndWhereAreasCarryTheLastGaugeOn) {
  River river = bare_river(1000, 1100);
  const Routed run = run_of(river, {outlook_of("heron", steady(50)), outlook_of("ferry", steady(55))});
  const Reach& last = run.graph.reaches[run.at(22.5)];
  ASSERT_TRUE(last.drainage_area.has_value());
  EXPECT_NEAR(run.middle(22.5, 0), 55.0 * (*last.drainage_area / square_miles(1100)), 1e-9);
  const FlowSource& source = run.flows.source[run.at(22.5)];
  EXPECT_EQ(source.from, (FlowAnchor{1, std::nullopt}));
  ASSERT_TRUE(source.area_ratio.has_value());
  EXPECT_NEAR(*source.area_ratio, *last.drainage_area / square_miles(1100), 1e-9);
}
TEST(UnknownFlows, GoByTheFirstGaugeShortlyAboveIt) {
  const Routed run = run_of(bare_river(0, 0), {outlook_of("heron", steady(50)), silent("ferry")});
  EXPECT_NEAR(run.middle(45.4, 0), 50.0, 1e-9);
}
TEST(UnknownFlows, TellOfALakeWithoutAWaveTime) {
  River river = bare_river();
  Lake lake;
  lake.name = "Mill Pond";
  lake.from = river_mile(42);
  lake.to = river_mile(41);
  river.lakes = {lake};
  EXPECT_THAT(run_of(river, {outlook_of("heron", steady(50)), outlook_of("ferry", steady(50))}).flows.doubts,
              Contains(HasSubstr("Mill Pond is counted without storage")));
}

}  // namespace
}  // namespace floatwright
