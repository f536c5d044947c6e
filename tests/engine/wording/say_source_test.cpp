#include "engine/wording/say_source.hpp"

#include <gtest/gtest.h>

#include "tests/support/sample_plan.hpp"

namespace floatwright::testing {
namespace {

constexpr auto kUs = UnitSystem::Us;
constexpr auto kMetric = UnitSystem::Metric;
constexpr FlowAnchor kHeron{0, std::nullopt}, kFerry{1, std::nullopt};

River river() { return sample_inputs().river; }  // gauges heron at mile 45.2, ferry at 28.9

PlannedReach reach(double to, FlowSource flow, TemperatureSource temperature = {}) {
  PlannedReach made;
  made.to = river_mile(to);
  made.flow_source = std::move(flow);
  made.temperature_source = std::move(temperature);
  return made;
}

FlowSource between() { return {.origin = FlowOrigin::Between, .from = kHeron, .to = kFerry}; }
FlowSource below_ferry(double ratio) { return {.origin = FlowOrigin::Below, .from = kFerry, .area_ratio = ratio}; }

TEST(KnownFlowsWords, AreInThePersonsUnits) {
  const KnownFlows measured{KnownFlows::Of::Channel, cubic_feet_per_second(1000), cubic_feet_per_second(2000)};
  const KnownFlows rated{KnownFlows::Of::Rating, cubic_feet_per_second(1000), cubic_feet_per_second(2000)};
  EXPECT_EQ(say(measured, kUs), "the channel was measured from 1,000 to 2,000 cfs");
  EXPECT_EQ(say(rated, kMetric), "the rating goes from 28.3 to 56.6 m3/s");
}

TEST(FlowSources, AreToldOncePartedAtTheGauge) {
  const std::vector<PlannedReach> reaches{reach(35, between()), reach(30.4, between()),
                                          reach(28.6, {.origin = FlowOrigin::At, .from = kFerry}),
                                          reach(25, below_ferry(1.02)), reach(22.4, below_ferry(1.03))};
  EXPECT_EQ(say_flow_sources(reaches, river(), kUs),
            "between the gauges heron and ferry above mile 28.9, from gauge ferry by drainage area below");
  EXPECT_EQ(say_flow_sources(reaches, river(), kMetric),
            "between the gauges heron and ferry above km 46.5, from gauge ferry by drainage area below");
}

TEST(FlowSources, SayWhatNobodyKnowsAndFromWhere) {
  const std::vector<PlannedReach> reaches{
      reach(25, below_ferry(1.02)), reach(1, {.away = miles(27.9), .why_unknown = "gauge ferry is too far away"})};
  EXPECT_EQ(
      say_flow_sources(reaches, river(), kUs),
      "from gauge ferry by drainage area above mile 25.0, not known: gauge ferry is too far away (27.9 mi) below");
}

TEST(FlowSources, HaveTheirNumbersInTheReadersUnit) {
  const FlowSource source{.origin = FlowOrigin::Below, .from = kFerry, .away = miles(5.2)};
  EXPECT_EQ(say(source, river(), kUs), "as gauge ferry, 5.2 mi above (no drainage areas typed)");
  EXPECT_EQ(say(source, river(), kMetric), "as gauge ferry, 8.4 km above (no drainage areas typed)");
  EXPECT_EQ(say(below_ferry(1.031), river(), kUs), "1.03 of gauge ferry by area");
}

TEST(FlowSources, NameTheDamWhoseReleasesSpeak) {
  River dammed = river();
  dammed.dams.resize(1);
  dammed.dams[0].name = "Heron Dam";
  const FlowSource source{
      .origin = FlowOrigin::Between, .from = {std::nullopt, 0}, .to = kFerry, .share_of_stem = true};
  EXPECT_EQ(say(source, dammed, kUs), "its share of the stem, between the releases of Heron Dam and gauge ferry");
}

TEST(TemperatureSources, GiveTheFarthestDistanceOfEachGauge) {
  const std::vector<PlannedReach> near{reach(30, {}, {1, miles(5.2), true}), reach(28, {}, {1})};
  EXPECT_EQ(say_temperature_sources(near, river(), kUs), "gauge ferry (up to 5.2 mi away)");
  EXPECT_EQ(say_temperature_sources(near, river(), kMetric), "gauge ferry (up to 8.4 km away)");
  EXPECT_EQ(say(near[0].temperature_source, river(), kUs), "gauge ferry, 5.2 mi downstream");
  const std::vector<PlannedReach> two{reach(30, {}, {0, miles(3)}), reach(28, {}, {1})};
  EXPECT_EQ(say_temperature_sources(two, river(), kUs),
            "gauge heron above mile 30.0 (up to 3.0 mi away), gauge ferry below");
}

TEST(TemperatureSources, SayBetweenWhatTheWaterWasFollowed) {
  EXPECT_EQ(say(TemperatureSource{.gauge = 0, .down_to = 1}, river(), kUs),
            "water followed from gauge heron to gauge ferry");
  River dammed = river();
  dammed.dams.resize(1);
  dammed.dams[0].name = "Heron Dam";
  EXPECT_EQ(say(TemperatureSource{.dam = 0, .down_to = 1}, dammed, kUs),
            "water followed from the release of Heron Dam to gauge ferry");
  EXPECT_EQ(say(TemperatureSource{.gauge = 1, .daily_means = true}, river(), kUs), "daily means only at gauge ferry");
}

}  // namespace
}  // namespace floatwright::testing
