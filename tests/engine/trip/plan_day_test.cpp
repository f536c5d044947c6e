// Whole days on the small river, through every room of the engine.
#include "engine/plan_day.hpp"

#include <gtest/gtest.h>

#include <algorithm>
#include <cmath>
#include <string>

#include "tests/engine/trip/small_river.hpp"

namespace floatwright {
namespace {

TEST(PlanDay, RecommendsOneStretchAndPutsItFirst) {
  const DayPlan plan = plan_day(small_day());
  ASSERT_EQ(plan.stretches.size(), 3u);
  EXPECT_EQ(plan.stretches[0].verdict, Verdict::Recommended);
  EXPECT_EQ(plan.stretches[1].verdict, Verdict::Possible);
  EXPECT_GE(plan.stretches[0].worth, plan.stretches[1].worth);
  for (const PlannedStretch& stretch : plan.stretches) EXPECT_FALSE(stretch.why.empty());
  EXPECT_FALSE(plan.stale);
  EXPECT_FALSE(plan.nothing);
  EXPECT_EQ(plan.main_gauge, "foot");
}

// Worth itself is never printed: the reason holds the ratio of the two best as whole percent.
TEST(PlanDay, SaysByHowMuchItsFishingHoursAreWorthMore) {
  const DayPlan plan = plan_day(small_day());
  const PlannedStretch &best = plan.stretches[0], &next = plan.stretches[1];
  const long more = std::lround(100.0 * (best.worth / next.worth - 1.0));
  ASSERT_GE(more, 1);
  EXPECT_EQ(best.why, "its fishing hours are worth " + std::to_string(more) + " % more than those of " + next.from_name +
                          " to " + next.to_name);
}

TEST(PlanDay, HasARigForEveryWaterOnARodThatIsAboard) {
  const DayInputs in = small_day();
  const DayPlan plan = plan_day(in);
  int rigged = 0;
  for (const PlannedReach& reach : plan.stretches[0].reaches) {
    for (const PlannedWater& water : reach.waters) {
      ASSERT_TRUE(water.choice.best.has_value());
      const std::string& rod = in.tackle.lines[water.choice.best->rig.line].on_rod;
      const auto& aboard = plan.stretches[0].rods.rods;
      rigged += std::any_of(aboard.begin(), aboard.end(), [&](std::size_t r) { return in.tackle.rods[r].id == rod; });
      EXPECT_GT(water.fishing, Duration{});
    }
  }
  EXPECT_EQ(rigged, 8);  // four rows of two waters
}

// Two gauges of known area are all that is known of the upper half: its channel is a guess, and is said to be one.
TEST(PlanDay, FishesWaterThatNobodyDescribedAndSaysThatItIsAGuess) {
  DayInputs in = small_day();
  in.river.notes.erase(in.river.notes.begin());
  GaugeSite head = in.river.gauges[0];
  head.id = "head";
  head.place = river_mile(14.0);
  head.drainage_area = square_miles(500.0);
  in.river.gauges.push_back(head);
  in.records.push_back(in.records[0]);
  in.records[1].gauge = "head";
  const DayPlan plan = plan_day(in);
  const auto upper = std::ranges::find(plan.stretches, "upper", &PlannedStretch::from);
  ASSERT_NE(upper, plan.stretches.end());
  const PlannedReach& reach = upper->reaches.front();
  EXPECT_FALSE(reach.described);
  ASSERT_EQ(reach.waters.size(), 1u);
  EXPECT_EQ(reach.waters[0].source, DepthSource::Guessed);
  EXPECT_GT(reach.waters[0].fishing, Duration{});
  EXPECT_TRUE(std::ranges::any_of(upper->cautions, [](const Caution& c) {
    return c.kind == CautionKind::GuessedDepth && c.text.find("guessed from its channel") != std::string::npos;
  }));
}

TEST(PlanDay, RigsNothingForWaterOfWhichOnlyTheFlowIsKnown) {
  DayInputs in = small_day();
  in.river.notes.clear();
  in.river.gauges[0].drainage_area.reset();
  for (const PlannedStretch& stretch : plan_day(in).stretches)
    for (const PlannedReach& reach : stretch.reaches) EXPECT_TRUE(reach.waters.empty());
}

TEST(PlanDay, KeepsAStretchThatBreaksALimitButLast) {
  DayInputs in = small_day();
  in.river.accesses[2].closed = true;
  const DayPlan plan = plan_day(in);
  ASSERT_EQ(plan.stretches.size(), 3u);
  EXPECT_EQ(plan.stretches[0].to, "middle");
  EXPECT_EQ(plan.stretches[2].verdict, Verdict::RuledOut);
  EXPECT_NE(plan.stretches[2].why.find("closed"), std::string::npos);
}

TEST(PlanDay, RecommendsNothingWhereTheBoatCannotGo) {
  DayInputs in = small_day();
  in.river.boat_limits.most_flow = cubic_feet_per_second(1500.0);
  const DayPlan plan = plan_day(in);
  for (const PlannedStretch& stretch : plan.stretches) EXPECT_EQ(stretch.verdict, Verdict::RuledOut);
}

TEST(PlanDay, MakesAPlanOfASilentRiverThatSaysSo) {
  DayInputs in = small_day();
  in.records = {GaugeRecord{}};
  const DayPlan plan = plan_day(in);
  EXPECT_TRUE(plan.nothing);
  EXPECT_TRUE(plan.stale);
  EXPECT_EQ(plan.missing_gauges, std::vector<std::string>{"foot"});
  for (const PlannedStretch& stretch : plan.stretches) {
    EXPECT_NE(stretch.verdict, Verdict::Recommended);
    for (const PlannedReach& reach : stretch.reaches) EXPECT_FALSE(reach.discharge.has_value());
  }
}

TEST(PlanDay, IsStaleAfterSixHoursWithoutAReading) {
  DayInputs in = small_day();
  in.now = kNow + std::chrono::hours{6};
  EXPECT_FALSE(plan_day(in).stale);
  in.now = kNow + std::chrono::hours{6} + std::chrono::minutes{1};
  EXPECT_TRUE(plan_day(in).stale);
}

TEST(PlanDay, StopsFishingWhereTheWaterGetsTooWarm) {
  DayInputs in = small_day(small_river(), {.flow_cfs = 1800.0, .mean_f = 65.0, .swing_f = 6.0});
  in.settings.from = "upper";
  in.settings.to = "lower";
  const DayPlan plan = plan_day(in);
  const PlannedStretch& stretch = plan.stretches.at(0);
  ASSERT_TRUE(stretch.stop_by.has_value());
  for (const PlannedReach& reach : stretch.reaches) {
    for (const PlannedWater& water : reach.waters) {
      if (reach.arrive >= *stretch.stop_by) { EXPECT_FALSE(water.choice.best.has_value()); }
      if (reach.leave <= *stretch.stop_by) { EXPECT_TRUE(water.choice.best.has_value()); }
    }
  }
  EXPECT_TRUE(std::any_of(stretch.cautions.begin(), stretch.cautions.end(),
                          [](const Caution& c) { return c.kind == CautionKind::HeatStop; }));
}

TEST(PlanDay, DoesNotFishAClosedReach) {
  DayInputs in = small_day();
  Closure closure;
  closure.from = river_mile(5.0);
  closure.to = river_mile(4.0);
  closure.why = "spawning fish";
  in.river.closures = {closure};
  int closed = 0;
  const DayPlan plan = plan_day(in);
  for (const PlannedReach& reach : plan.stretches[0].reaches) {
    if (reach.closed_why.empty()) continue;
    ++closed;
    for (const PlannedWater& water : reach.waters) {
      EXPECT_FALSE(water.choice.best.has_value());
      EXPECT_NE(water.choice.why_none.find("spawning fish"), std::string::npos);
    }
  }
  EXPECT_EQ(closed, 1);
}

// One keeps the afternoon closed, the other the day: the water is closed in the morning too, whichever is typed first.
TEST(PlanDay, DoesNotFishWhereOneOfSeveralClosuresStands) {
  DayInputs in = small_day();
  Closure afternoon;
  afternoon.from = river_mile(5.0);
  afternoon.to = river_mile(4.0);
  afternoon.hours = HoursOfDay{hours(20.0), hours(24.0)};
  afternoon.why = "warm evenings";
  Closure all_day = afternoon;
  all_day.hours.reset();
  all_day.why = "spawning fish";
  in.river.closures = {afternoon, all_day};
  for (const bool turned : {false, true}) {
    if (turned) std::ranges::reverse(in.river.closures);
    const PlannedStretch stretch = plan_day(in).stretches.at(0);
    const auto closed = std::ranges::find_if(stretch.reaches, [](const PlannedReach& r) { return !r.closed_why.empty(); });
    ASSERT_NE(closed, stretch.reaches.end()) << turned;
    EXPECT_EQ(closed->closed_why, "spawning fish") << turned;  // the other is not met
    EXPECT_FALSE(is_fished(*closed)) << turned;
    const auto told = std::ranges::count(stretch.cautions, CautionKind::Closure, &Caution::kind);
    EXPECT_EQ(told, 2) << turned;
  }
}

TEST(PlanDay, HasNoStretchForADayTooFarAhead) {
  DayInputs in = small_day();
  in.day = std::chrono::year{2027} / 6 / 1;
  const DayPlan plan = plan_day(in);
  EXPECT_TRUE(plan.stretches.empty());
  EXPECT_NE(plan.why_no_stretch.find("two days ahead"), std::string::npos);
}

TEST(PlanDay, SaysWhenNoStretchLeadsWhereItWasAsked) {
  DayInputs in = small_day();
  in.settings.from = "lower";
  in.settings.to = "upper";
  const DayPlan plan = plan_day(in);
  EXPECT_TRUE(plan.stretches.empty());
  EXPECT_FALSE(plan.why_no_stretch.empty());
}

TEST(PlanDay, RemembersThatRainIsNotLookedAt) {
  const DayPlan plan = plan_day(small_day());
  EXPECT_TRUE(std::any_of(plan.cautions.begin(), plan.cautions.end(),
                          [](const Caution& c) { return c.kind == CautionKind::ForecastDoubt; }));
}

// The course drawn on a hydrograph is the one that the table of hours tells.
TEST(PlanDay, TellsTheSameFlowInTheCourseAsInTheHours) {
  const DayPlan plan = plan_day(small_day());
  int compared = 0;
  for (const HourRow& hour : plan.hours)
    for (const FlowRow& row : plan.course) {
      if (row.at != hour.at || !hour.flow) continue;
      ASSERT_TRUE(row.flow);
      EXPECT_EQ(row.flow->best.si(), hour.flow->best.si());
      EXPECT_EQ(row.flow->high.si(), hour.flow->high.si());
      ++compared;
    }
  EXPECT_GE(compared, 10);
  ASSERT_FALSE(plan.course.empty());
  EXPECT_LE(plan.course.front().at - (plan.made_at - std::chrono::hours{36}), std::chrono::hours{1});
  EXPECT_EQ(plan.course_at, plan.stretches.front().from_name);
}

}  // namespace
}  // namespace floatwright
