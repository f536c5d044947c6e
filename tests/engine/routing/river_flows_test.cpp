#include "engine/routing/river_flows.hpp"

#include <gmock/gmock.h>
#include <gtest/gtest.h>

#include <cmath>
#include <numbers>

#include "small_river.hpp"

namespace floatwright {
namespace {

using ::testing::Contains;
using ::testing::HasSubstr;
using ::testing::Not;

double wave(double h) { return 50.0 + 5.0 * std::sin(2 * std::numbers::pi * h / 24.0); }

TEST(RiverFlows, CarrySteadyWaterUnchanged) {
  const Routed run = run_of(bare_river(), {outlook_of("heron", steady(50)), outlook_of("ferry", steady(50))});
  for (const double mile : {45.4, 44.0, 39.0, 30.0})
    EXPECT_NEAR(run.middle(mile, 12), 50.0, 0.6) << mile;  // area between is small
}
TEST(RiverFlows, LetAGaugeStandAtItsOwnPlace) {
  const Routed run = run_of(bare_river(), {outlook_of("heron", wave), outlook_of("ferry", steady(55))});
  const std::size_t ends_at_ferry = *run.graph.gauge_reach[1];
  EXPECT_NEAR(flow_at(run.flows, ends_at_ferry, kNow + std::chrono::hours{9}).middle.si(), 55.0, 1e-9);
  EXPECT_EQ(run.flows.source[ends_at_ferry].origin, FlowOrigin::At);
  EXPECT_EQ(run.flows.source[ends_at_ferry].from.gauge, 1u);
  const FlowSource& between = run.flows.source[run.at(40)];
  EXPECT_EQ(between.origin, FlowOrigin::Between);
  EXPECT_EQ(between.from.gauge, 0u);
  EXPECT_EQ(between.to.gauge, 1u);
}
// Just above the lower gauge the routed river meets it as a 24 h mean, before now and after.
TEST(RiverFlows, CloseOnTheLowerGaugeAsADailyMean) {
  River river = bare_river();
  river.accesses.push_back(access_at("last", 29.0));
  const Routed run = run_of(river, {outlook_of("heron", wave), outlook_of("ferry", [](double h) {
                                      return 54.0 + 4.0 * std::sin(2 * std::numbers::pi * (h - 3) / 24.0);
                                    })});
  for (const int first : {-48, -24, 0}) {
    double sum = 0.0;
    for (int h = first; h < first + 24; ++h) sum += run.middle(29.05, h);
    EXPECT_NEAR(sum / 24.0, 54.0, 0.1) << "from hour " << first;  // 0.2 %: the last tenth of a mile
  }
}
TEST(RiverFlows, KeepTheCasesApart) {
  const auto with_high = [](double factor) {
    auto heron = outlook_of("heron", wave, 0.1);
    for (Discharge& q : heron.flow.value().high) q = q * factor;
    return run_of(bare_river(), {heron, outlook_of("ferry", steady(52), 0.1)});
  };
  const Routed one = with_high(1.0), other = with_high(1.5);
  EXPECT_EQ(one.flows.flow.low, other.flows.flow.low);
  EXPECT_EQ(one.flows.flow.middle, other.flows.flow.middle);
  EXPECT_NE(one.flows.flow.high, other.flows.flow.high);
}
TEST(RiverFlows, AddATributaryByItsGaugeAndAreaWhereItJoins) {
  River river = bare_river(0, 0);
  river.gauges.push_back(gauge_site("alder", std::nullopt, 210));
  river.tributaries = {{"alder_creek", "Alder Creek", river_mile(35), square_miles(225), "alder"}};
  const Routed run = run_of(river, {outlook_of("heron", steady(50)), silent("ferry"), outlook_of("alder", steady(7))});
  EXPECT_NEAR(run.middle(36, 0), 50.0, 1e-9);
  EXPECT_NEAR(run.middle(34.7, 0), 50.0 + 7.0 * 225 / 210, 1e-9);
}
TEST(RiverFlows, RefuseATributaryGaugeTooFarInAreaAndSaySo) {
  River river = bare_river();
  river.gauges.push_back(gauge_site("alder", std::nullopt, 50));
  river.tributaries = {{"alder_creek", "Alder Creek", river_mile(35), square_miles(225), "alder"}};
  const Routed run =
      run_of(river, {outlook_of("heron", steady(50)), outlook_of("ferry", steady(52)), outlook_of("alder", steady(7))});
  EXPECT_THAT(run.flows.doubts, Contains(HasSubstr("Alder Creek: flow unknown")));
}
// 400 mi2 of 980: by area 0.41 of it; a dam or a large ditch above the gauge hides what the ground gives.
TEST(RiverFlows, TellAnUngaugedTributaryByAreaFromANaturalGaugeOnly) {
  River river = bare_river();
  river.gauges[1].drainage_area.reset();
  river.accesses.push_back(access_at("above", 48));
  river.tributaries = {{"alder_creek", "Alder Creek", river_mile(35), square_miles(400), ""}};
  const std::vector<GaugeOutlook> outlooks{outlook_of("heron", steady(50)), silent("ferry")};
  EXPECT_THAT(run_of(river, outlooks).flows.doubts,
              Contains("Alder Creek has no gauge: taken as 0.41 of gauge heron by area."));
  const auto unknown = Contains(HasSubstr("Alder Creek: flow unknown (no gauge above dams and large ditches"));
  River diverted = river;
  diverted.diversions = {{"canal", "Canal", river_mile(47), cubic_metres_per_second(15), std::nullopt}};
  EXPECT_THAT(run_of(diverted, outlooks).flows.doubts, unknown);
  river.dams = {heron_dam()};
  EXPECT_THAT(run_of(river, outlooks).flows.doubts, unknown);
}
TEST(RiverFlows, SplitWhatASideChannelTakesAndJoinItAgain) {
  River river = bare_river(0, 0);
  river.side_channels = {{"cottonwood",
                          "Cottonwood Channel",
                          river_mile(38.6),
                          river_mile(37.4),
                          {{cubic_metres_per_second(20), 0.05}, {cubic_metres_per_second(80), 0.25}}}};
  const Routed run = run_of(river, {outlook_of("heron", steady(50)), silent("ferry")});
  double branch = 0.0;
  for (std::size_t r = 0; r < run.graph.reaches.size(); ++r)
    if (run.graph.reaches[r].side_channel) branch = flow_at(run.flows, r, kNow).middle.si();
  EXPECT_NEAR(branch, 50.0 * 0.15, 1e-9);  // half way between the typed flows
  EXPECT_NEAR(run.middle(38, 0), 50.0 * 0.85, 1e-9);
  EXPECT_NEAR(run.middle(37, 0), 50.0, 1e-9);
}
TEST(RiverFlows, TakeADiversionInItsSeasonOnly) {
  River river = bare_river(0, 0);
  river.diversions = {
      {"mill_ditch", "Mill ditch", river_mile(41.5), cubic_metres_per_second(2), Season{{5, 1}, {9, 15}}}};
  const auto flow_below = [&] {
    return run_of(river, {outlook_of("heron", steady(50)), silent("ferry")}).middle(41, 0);
  };
  EXPECT_NEAR(flow_below(), 48.0, 1e-9);
  river.diversions[0].season = Season{{6, 1}, {9, 15}};
  EXPECT_NEAR(flow_below(), 50.0, 1e-9);
}
TEST(RiverFlows, NeverRunADiversionBelowZero) {
  River river = bare_river();
  river.diversions = {{"mill_ditch", "Mill ditch", river_mile(41.5), cubic_metres_per_second(70), std::nullopt}};
  const Routed run = run_of(river, {outlook_of("heron", steady(50)), outlook_of("ferry", steady(20))});
  for (const auto& row : run.flows.flow.low)
    for (const Discharge q : row) EXPECT_GE(q.si(), 0.0);
  EXPECT_THAT(run.flows.doubts, Contains(HasSubstr("more than the river carries")));
}
TEST(RiverFlows, SpreadUnseenInflowByDrainageArea) {
  River river = bare_river(1000, 1100);
  river.accesses.push_back(access_at("last", 29.0));
  const Routed run = run_of(river, {outlook_of("heron", steady(50)), outlook_of("ferry", steady(55))});
  EXPECT_NEAR(run.middle(40.5, 0), 50.0 + 5.0 * (45.2 - 40.2) / (45.2 - 28.9), 1e-6);  // reach ends at mile 40.2
}
TEST(RiverFlows, SpreadNoMoreThanThirtyPercentWhereAreasAreTyped) {
  River river = bare_river();
  river.accesses.push_back(access_at("last", 29.0));
  const Routed run = run_of(river, {outlook_of("heron", steady(50)), outlook_of("ferry", steady(90))});
  EXPECT_LE(run.middle(29.05, 0), 65.0 + 1e-9);
  EXPECT_THAT(run.flows.doubts, Contains(HasSubstr("no more than 30 % is spread")));
}
// Gauges of 10 % each may be 14 % apart; the ground between drains a third of what lies above.
TEST(RiverFlows, TellOfAGaugeThatDisagreesBeyondItsUncertainty) {
  const auto doubts = [](double ferry) {
    return run_of(bare_river(), {outlook_of("heron", steady(50)), outlook_of("ferry", steady(ferry))}).flows.doubts;
  };
  EXPECT_THAT(doubts(40), Contains(HasSubstr("gauge ferry shows 20 % less than what comes down from gauge heron")));
  EXPECT_THAT(doubts(46), Not(Contains(HasSubstr("one of them is off"))));
  EXPECT_THAT(doubts(62), Not(Contains(HasSubstr("one of them is off"))));
  EXPECT_THAT(doubts(120), Contains(HasSubstr("gauge ferry shows 140 % more than what comes down from gauge heron, and "
                                              "the ground between would bring 32 %")));
}
TEST(RiverFlows, HoldBackAFloodInALakeWithAWaveTime) {
  River river = bare_river(0, 0);
  Lake lake;
  lake.id = lake.name = "Mill Pond";
  lake.from = river_mile(42);
  lake.to = river_mile(41);
  river.lakes = {lake};
  river.wave_times = {{*lake.from, *lake.to, cubic_metres_per_second(50), hours(6)}};
  const auto step = [](double h) { return h < -24 ? 40.0 : 60.0; };
  const Routed run = run_of(river, {outlook_of("heron", step), silent("ferry")});
  // Six hours after it came to the lake, a reservoir has let 1 - 1/e of the rise through, a channel half of it.
  const double arrives = -24.0 + 5.0 * 1609.0 / 1.5 / 3600.0;
  EXPECT_NEAR(run.middle(40.5, arrives + 6.0), 40.0 + 20.0 * (1.0 - std::exp(-1.0)), 1.5);
  EXPECT_LT(run.middle(40.5, arrives + 18.0), 59.5);
}
TEST(RiverFlows, AskForAMissingTributaryWhereNothingIsTyped) {
  River river = bare_river(0, 0);
  const Routed run = run_of(river, {outlook_of("heron", steady(50)), outlook_of("ferry", steady(90))});
  EXPECT_THAT(run.flows.doubts, Contains(HasSubstr("is a tributary or a diversion missing")));
}
TEST(RiverFlows, RouteReleasesThroughAGaugeThatOnlyRepeatsItsHours) {
  River river = bare_river(0, 0);
  river.dams = {heron_dam({{kNow - std::chrono::hours{100}, cubic_metres_per_second(40)},
                           {kNow + std::chrono::hours{4}, cubic_metres_per_second(60)}})};
  river.wave_times = {{river_mile(46), river_mile(28.9), cubic_metres_per_second(50), hours(5)}};
  const auto release = [](double h) { return h < 4 ? 40.0 : 60.0; };
  const Routed run = run_of(river, {outlook_of("heron", release, 0.1, FlowMethod::Schedule),
                                    outlook_of("ferry", steady(42), 0.1, FlowMethod::SameHour)});
  EXPECT_NEAR(run.middle(28.0, 2), 42.0, 0.2);
  EXPECT_NEAR(run.middle(28.0, 20), 62.0, 0.5);  // the rise has passed the gauge; 2 m3/s enter between
  EXPECT_EQ(run.flows.follows_dam, (std::vector<std::optional<std::size_t>>{0, 0}));
}
TEST(RiverFlows, AreInterpolatedBetweenStepsAndHeldPastTheEnds) {
  const Routed run = run_of(bare_river(), {outlook_of("heron", [](double h) { return 50 + h / 10; }), silent("ferry")});
  const std::size_t heron = *run.graph.gauge_reach[0];
  EXPECT_NEAR(flow_at(run.flows, heron, kNow + std::chrono::minutes{30}).middle.si(), 50.05, 1e-9);
  EXPECT_NEAR(flow_at(run.flows, heron, kNow + std::chrono::hours{500}).middle.si(), 53.6, 1e-9);
  EXPECT_NEAR(flow_at(run.flows, heron, kNow - std::chrono::hours{500}).middle.si(), 40.4, 1e-9);
}

}  // namespace
}  // namespace floatwright
