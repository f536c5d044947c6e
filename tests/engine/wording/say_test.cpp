// Rigs, ways of fishing, the river's state, reasons: as the trade says them (common practice, no source).
#include <gmock/gmock.h>

#include "engine/wording/say_choice.hpp"
#include "engine/wording/say_limit.hpp"
#include "engine/wording/say_reading.hpp"
#include "engine/wording/say_rig.hpp"
#include "engine/wording/say_river_state.hpp"
#include "engine/wording/say_technique.hpp"
#include "tests/support/sample_plan.hpp"
#include "tests/support/sample_tackle.hpp"

namespace floatwright::testing {
namespace {

constexpr auto kUs = UnitSystem::Us;
constexpr auto kMetric = UnitSystem::Metric;

ScoredRig streamer() {
  ScoredRig rig;
  rig.leader = feet(3.5);
  return rig;
}

PlannedWater mill_run() { return sample_plan().stretches[0].reaches[0].waters[0]; }

TEST(RigWords, NameLineLeaderAndFly) {
  EXPECT_EQ(say(sample_tackle(), streamer(), kUs), "sinking tip 12 1/2 ft 5 in/s, leader 3 1/2 ft, weighted streamer");
  EXPECT_EQ(say(sample_tackle(), streamer(), kMetric), "sinking tip 3.8 m 13 cm/s, leader 1.1 m, weighted streamer");
}

TEST(RigWords, GiveBothRatesOfADensityCompensatedTip) {
  EXPECT_EQ(say_line(sample_tackle(), Rig{4, std::nullopt, 0, Mass{}}, kUs), "sinking tip 15 ft 5 1/2 to 6 1/2 in/s");
}

TEST(RigWords, NameTheTipLoopedToAHead) {
  EXPECT_EQ(say_line(sample_tackle(), Rig{5, 0, 0, Mass{}}, kUs), "looped head, tip 10 ft 7 in/s");
}

TEST(RigWords, GiveDepthAndWeightUnderAnIndicator) {
  ScoredRig rig;
  rig.rig = {2, std::nullopt, 2, grams(0.4)};
  rig.technique.method = Method::Indicator;
  rig.indicator_to_fly = feet(7.5);
  EXPECT_EQ(say_leader(sample_tackle(), rig, kUs), "indicator: 7 1/2 ft to fly, 0.9 g in all");
  EXPECT_EQ(say_fly(sample_tackle(), rig.rig), "heavy nymph size 8, 0.4 g shot");
}

TEST(RodWords, AreLengthAndLineNumber) {
  EXPECT_EQ(say(Rod{"a", "square", 6, feet(9)}, kUs), "9 ft 6-wt");
  EXPECT_EQ(say(Rod{"a", "square", 7, feet(9.5)}, kUs), "9 ft 6 in 7-wt");
  EXPECT_EQ(say(Rod{"a", "square", 3, feet(10 + 11.99 / 12.0)}, kUs), "11 ft 3-wt");
}

TEST(TechniqueWords, SayFromWhereAndHow) {
  EXPECT_EQ(say(Technique{Method::Swing, Mending::OneMend, Duration{}, Speed{}, Platform::Anchored}),
            "ANCHOR, one mend, swing");
  EXPECT_EQ(say(Technique{Method::Strip, Mending::Tight, seconds(3), metres_per_second(0.3), Platform::Drifting}),
            "count 3, slow strip");
  EXPECT_EQ(say(Technique{Method::Strip, Mending::Tight, Duration{}, metres_per_second(0.6), Platform::Held}),
            "HOLD, fast strip");
}

struct StateSentence : ::testing::Test {
  StateSentence() {
    river.gauges = {{"ferry", "Lantern at Old Ferry", "usgs:00000003", river_mile(28.9), std::nullopt}};
    outlook.gauge = "ferry";
    outlook.now = cubic_feet_per_second(2030);
    outlook.now_at = on_the_day(0) - std::chrono::minutes{270};
  }
  [[nodiscard]] std::string said(const std::string& dam = "") const {
    const auto evening = clock.day(on_the_day(0) - std::chrono::minutes{220});
    return say(outlook, StateWords{river, clock, kUs, evening, "tomorrow", dam});
  }

  River river;
  LocalClock clock{"America/Denver"};
  GaugeOutlook outlook;
};

TEST_F(StateSentence, GivesFlowHourStateAndHowTheDayWasTold) {
  outlook.state = FlowState::Falling;
  outlook.method = FlowMethod::FadingFall;
  outlook.change_6h = -0.0305;  // exp(-0.0305) = 0.970
  EXPECT_EQ(said(),
            "Lantern at Old Ferry 2,030 cfs at 19:30, falling slowly, down 3 % in 6 h; tomorrow falls on, more "
            "slowly");
}

TEST_F(StateSentence, SaysWhichDaysMeanTheFlowIsAndNoPaceWithinIt) {
  outlook.state = FlowState::Falling;
  outlook.method = FlowMethod::DailyMeans;
  outlook.only_daily_means = true;
  outlook.why = "down 10 % from one day's mean to the next";
  EXPECT_THAT(said(), ::testing::StartsWith("Lantern at Old Ferry 2,030 cfs in the mean of "));
  EXPECT_THAT(said(), ::testing::EndsWith(", falling, down 10 % from one day's mean to the next; tomorrow as such days "
                                          "went on"));
}

TEST_F(StateSentence, SaysADamOnceAndWhetherItsReleasesAreFollowed) {
  outlook.state = FlowState::Regulated;
  outlook.method = FlowMethod::SameHour;
  outlook.why = "up 17 % in 6 h below a dam that ramps";
  EXPECT_EQ(said(),
            "Lantern at Old Ferry 2,030 cfs at 19:30, up 17 % in 6 h below a dam that ramps; tomorrow as at the "
            "same hour on like days");
  EXPECT_THAT(said("Heron Dam"), ::testing::EndsWith("; tomorrow the releases typed for Heron Dam, routed down"));
  outlook.method = FlowMethod::Schedule;
  EXPECT_THAT(said("Heron Dam"), ::testing::EndsWith("; tomorrow by the releases typed for Heron Dam"));
}

TEST_F(StateSentence, SaysWhyWhenNothingIsKnown) {
  outlook.now = Absent{"no reading for 3 days"};
  outlook.why = "no reading for 3 days";
  EXPECT_EQ(said(), "Lantern at Old Ferry: state not known (no reading for 3 days); tomorrow is not known");
}

TEST(TrendWords, SaySnowmeltOnlyOfASnowFedRiver) {
  GaugeOutlook outlook;
  outlook.state = FlowState::DailyWave;
  EXPECT_EQ(say_trend(outlook, true), "up and down each day with snowmelt");
  EXPECT_EQ(say_trend(outlook, false), "up and down each day");
}

TEST(ReasonWords, ArePlainNumbers) {
  EXPECT_EQ(say_reason(mill_run(), sample_tackle(), kUs),
            "fishes 2 1/2 ft down in 4 1/2 ft at 3 1/2 ft/s, 14 seconds of each minute in the zone; next best: "
            "sinking tip 10 ft 4 in/s, 11 seconds");
}

TEST(ReasonWords, DoNotCompareTheSecondsOfTwoMethods) {
  PlannedWater water = mill_run();
  water.choice.runner_up->technique = {Method::Strip, Mending::Tight, Duration{}, metres_per_second(0.3),
                                       Platform::Drifting};
  const std::string reason = say_reason(water, sample_tackle(), kUs);
  EXPECT_NE(reason.find("another way: sinking tip 10 ft 4 in/s, slow strip"), std::string::npos) << reason;
  EXPECT_EQ(reason.find("11 seconds"), std::string::npos) << reason;
}

TEST(ReasonWords, CallARivalThatFishesAsLongAsGood) {
  PlannedWater water = mill_run();
  water.choice.runner_up->seconds = 14.0;
  EXPECT_NE(say_reason(water, sample_tackle(), kUs).find("as good: sinking tip 10 ft 4 in/s, 14 seconds"),
            std::string::npos);
}

TEST(ReasonWords, SayThatARivalFishesLonger) {
  PlannedWater water = mill_run();
  water.choice.runner_up->seconds = 16.0;
  EXPECT_NE(say_reason(water, sample_tackle(), kUs).find("more with sinking tip 10 ft 4 in/s, 16 seconds"),
            std::string::npos);
  EXPECT_NE(say_reason(water, sample_tackle(), kUs, " (ashore)").find("more with sinking tip 10 ft 4 in/s (ashore), 16 seconds"),
            std::string::npos);
}

TEST(ReasonWords, AreNoneWithoutAChoice) { EXPECT_EQ(say_reason(PlannedWater{}, sample_tackle(), kUs), ""); }

TEST(ChangeWords, NameTheFlowAndTheLine) {
  EXPECT_EQ(say_change(mill_run().choice, sample_tackle(), kUs), "under 1,500 cfs: sinking tip 10 ft 4 in/s");
}

TEST(ChangeWords, NameTheRangeWhereTheLineHolds) {
  WaterChoice choice;
  choice.holds = {cubic_feet_per_second(1204), cubic_feet_per_second(2890)};
  EXPECT_EQ(say_change(choice, sample_tackle(), kUs), "same line from 1,200 to 2,900 cfs");
  EXPECT_EQ(say_change(WaterChoice{}, sample_tackle(), kUs), "");
}

TEST(LimitWords, GiveTheNumbersOfTheLimit) {
  const LocalClock clock("America/Denver");
  PlannedStretch stretch;
  BrokenLimit limit;
  limit.kind = LimitKind::FlowAboveBoat;
  limit.flow = cubic_feet_per_second(5600);
  limit.flow_limit = cubic_feet_per_second(5200);
  stretch.limit = limit;
  EXPECT_EQ(say_why_not(stretch, River{}, clock, kUs), "5,600 cfs is over the limit of 5,200 cfs");
  limit = {};
  limit.kind = LimitKind::AfterDark;
  limit.where = "sunset";
  limit.at = on_the_day(21, 40);
  limit.at_limit = on_the_day(21, 14);
  stretch.limit = limit;
  EXPECT_EQ(say_why_not(stretch, River{}, clock, kUs), "off the water at 21:40, sunset 21:10");
}

TEST(LimitWords, FallBackOnThePlansOwnWords) {
  PlannedStretch stretch;
  stretch.why = "the take-out is closed.";
  EXPECT_EQ(say_why_not(stretch, River{}, LocalClock("UTC"), kUs), "the take-out is closed");
}

TEST(ReadingWords, GiveValueAgeAndMarks) {
  const DayPlan plan = sample_plan();
  const LocalClock clock(plan.time_zone);
  EXPECT_EQ(say_value(plan.readings[0], kUs), "1,850 cfs");
  EXPECT_EQ(say_when(plan.readings[0], plan.made_at, plan.day, clock),
            "read 19:45 the day before, 35 min old, provisional");
}

TEST(ReadingWords, SayWhyThereIsNoValue) {
  NewestReading reading;
  reading.si = Absent{"ice"};
  EXPECT_EQ(say_value(reading, kUs), "not read: ice");
}

}  // namespace
}  // namespace floatwright::testing
