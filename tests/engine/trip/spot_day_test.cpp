// The day at one spot: which hours are fished, which are kept out and why.
#include <gmock/gmock.h>

#include "engine/trip/sun.hpp"
#include "engine/trip/wading.hpp"
#include "tests/engine/trip/small_river.hpp"

namespace floatwright {
namespace {

using ::testing::HasSubstr;

// Mile 9, gravel, waded; two feet of water at two feet a second unless said otherwise.
DayInputs day_at_the_bend(double depth_ft = 2.0, double speed_ft_s = 2.0, const Readings& readings = {}) {
  River river = small_river();
  Spot bend;
  bend.id = "bend";
  bend.name = "Gravel Bend";
  bend.place = river_mile(9.0);
  bend.bed = Bed::Gravel;
  bend.waters = {noted(WaterType::Run, 1.0, depth_ft, speed_ft_s)};
  river.spots = {bend};
  DayInputs in = small_day(river, readings);
  in.spot = 0;
  return in;
}

std::vector<std::string> reasons(const PlannedStretch& spot) {
  std::vector<std::string> all;
  for (const PlannedReach& hours : spot.reaches)
    if (!hours.kept_out.empty()) all.push_back(hours.kept_out);
  return all;
}

const PlannedStretch& only(const DayPlan& plan) {
  EXPECT_EQ(plan.stretches.size(), 1U);
  return plan.stretches.at(0);
}

TEST(SpotDay, IsTheSpotFromTheFirstHourToTheLast) {
  const DayPlan plan = plan_day(day_at_the_bend());
  const PlannedStretch& spot = only(plan);
  EXPECT_EQ(spot.spot, Platform::Wading);
  EXPECT_EQ(spot.from, "bend");
  EXPECT_EQ(spot.to_name, "Gravel Bend");
  EXPECT_EQ(spot.verdict, Verdict::Recommended);
  EXPECT_EQ(spot.launch, local(7, 30));
  EXPECT_EQ(spot.end, local(19));
  EXPECT_NEAR(in_hours(spot.fishing), 11.5, 1e-9);
}

TEST(SpotDay, HasHoursThatFollowEachOtherWithoutAGap) {
  const DayPlan plan = plan_day(day_at_the_bend());
  const auto& hours = only(plan).reaches;
  ASSERT_GT(hours.size(), 3U) << "each row is read at its own hour";
  EXPECT_EQ(hours.front().arrive, local(7, 30));
  EXPECT_EQ(hours.back().leave, local(19));
  for (std::size_t i = 0; i + 1 < hours.size(); ++i) EXPECT_EQ(hours[i].leave, hours[i + 1].arrive);
  for (const auto& row : hours) EXPECT_LE(row.leave - row.arrive, std::chrono::hours{2});
}

// The guest of the settings does not wade and their platforms are a boat's: at a spot what was typed for it holds.
TEST(SpotDay, FishesAsWasTypedForTheSpot) {
  const DayPlan plan = plan_day(day_at_the_bend());
  for (const PlannedReach& hours : only(plan).reaches)
    for (const PlannedWater& water : hours.waters) {
      ASSERT_TRUE(water.choice.best.has_value());
      EXPECT_EQ(water.choice.best->technique.platform, Platform::Wading);
      EXPECT_NEAR(in_feet(water.depth->best), 2.0, 0.1) << "the spot's own note, not the reach's of 4.5 ft";
    }
}

TEST(SpotDay, EndsAtSunset) {
  DayInputs in = day_at_the_bend();
  in.settings.latest_off = hours(23.0);
  const DayPlan plan = plan_day(in);
  const PlannedStretch& spot = only(plan);
  ASSERT_TRUE(plan.sun_known);
  EXPECT_LE(spot.end, plan.sunset);
  EXPECT_GT(spot.end, plan.sunset - std::chrono::minutes{10});
}

// Over 4 ft, and 3.5 ft at 3 ft/s of mean speed is over 6.5 ft2/s (the basis of both in engine/trip/wading.hpp).
TEST(SpotDay, IsRuledOutWhereTheWaterIsTooDeepOrTooFastToWade) {
  for (const auto& [depth, speed] : {std::pair{4.5, 0.5}, std::pair{3.5, 3.5}}) {
    const DayPlan plan = plan_day(day_at_the_bend(depth, speed));
    const PlannedStretch& spot = only(plan);
    EXPECT_EQ(spot.verdict, Verdict::RuledOut);
    ASSERT_TRUE(spot.limit.has_value());
    EXPECT_EQ(spot.limit->kind, LimitKind::NoHours);
    EXPECT_THAT(spot.why, HasSubstr("too deep or too fast to wade"));
    for (const PlannedReach& hours : spot.reaches)
      for (const PlannedWater& water : hours.waters) EXPECT_FALSE(water.choice.best.has_value());
  }
}

TEST(SpotDay, LeavesOutTheOneWaterThatIsTooDeep) {
  DayInputs in = day_at_the_bend();
  in.river.spots[0].waters = {noted(WaterType::Run, 0.5, 2.0, 2.0), noted(WaterType::Pool, 0.5, 6.0, 1.0)};
  const DayPlan plan = plan_day(in);
  const PlannedStretch& spot = only(plan);
  EXPECT_EQ(spot.verdict, Verdict::Recommended);
  for (const PlannedReach& hours : spot.reaches) {
    EXPECT_TRUE(hours.waters.at(0).choice.best.has_value());
    EXPECT_FALSE(hours.waters.at(1).choice.best.has_value());
    EXPECT_EQ(hours.waters.at(1).choice.why_none, kTooMuchToWade);
  }
}

// 58 of 100 released trout were caught again under 21 C, 35 of 100 above (engine/trip/heat.hpp): no fishing from 70 F on.
TEST(SpotDay, StopsHalfAnHourBeforeTheWaterIsTooWarmAndNotAgainThatDay) {
  const DayPlan plan = plan_day(day_at_the_bend(2.0, 2.0, {.mean_f = 66.0, .swing_f = 6.0}));
  const PlannedStretch& spot = only(plan);
  ASSERT_TRUE(spot.stop_by.has_value());
  EXPECT_LE(spot.end, *spot.stop_by);
  EXPECT_THAT(reasons(spot), ::testing::ElementsAre("too warm for trout"));
  EXPECT_EQ(spot.reaches.back().leave, local(19)) << "out until the end of the day";
}

DayInputs below_a_dam() {
  DayInputs in = day_at_the_bend();
  Dam dam;
  dam.id = "dam";
  dam.name = "Thrush Dam";
  dam.place = river_mile(12.0);
  dam.ramping = true;
  dam.schedule = {{kNow - std::chrono::hours{96}, cubic_feet_per_second(1800.0)}, {local(9), cubic_feet_per_second(2200.0)}};
  in.river.dams = {dam};
  return in;
}

TEST(SpotDay, IsOutOfTheWaterWhileADamsRiseMayCome) {
  const DayPlan plan = plan_day(below_a_dam());
  const auto front = std::find_if(plan.fronts.begin(), plan.fronts.end(),
                                  [](const DamFront& f) { return f.place_name == "Gravel Bend"; });
  ASSERT_NE(front, plan.fronts.end());
  bool kept_out = false;
  for (const PlannedReach& hours : only(plan).reaches) {
    const bool meets = hours.arrive < front->latest && hours.leave > front->earliest;
    EXPECT_FALSE(meets && is_fished(hours));
    kept_out = kept_out || hours.kept_out == "more water may come from the dam";
  }
  EXPECT_TRUE(kept_out);
}

TEST(SpotDay, SaysWhatMayDrownAWaderFirst) {
  const DayPlan plan = plan_day(below_a_dam());
  const auto& cautions = only(plan).cautions;
  ASSERT_GT(cautions.size(), 2U);
  EXPECT_EQ(cautions[0].kind, CautionKind::DamRise);
  EXPECT_EQ(cautions[1].kind, CautionKind::Wading) << "told within the limits too";
  for (const Caution& caution : cautions) EXPECT_TRUE(caution.on_foot);
}

TEST(SpotDay, KeepsABoatToItsFlowAndAWaderNot) {
  DayInputs in = day_at_the_bend();
  in.river.boat_limits.most_flow = cubic_feet_per_second(1500.0);
  EXPECT_EQ(only(plan_day(in)).verdict, Verdict::Recommended);
  in.river.spots[0].platform = Platform::Anchored;
  const DayPlan plan = plan_day(in);
  EXPECT_EQ(only(plan).verdict, Verdict::RuledOut);
  EXPECT_THAT(reasons(only(plan)), ::testing::ElementsAre("the flow is outside your boat's limits"));
  EXPECT_EQ(only(plan).cautions.at(0).kind, CautionKind::BoatLimit);
}

TEST(SpotDay, KeepsTheHoursOfAClosure) {
  DayInputs in = day_at_the_bend();
  Closure closure;
  closure.from = river_mile(9.5);
  closure.to = river_mile(8.5);
  closure.hours = HoursOfDay{hours(14.0), hours(24.0)};
  closure.why = "warm afternoons";
  in.river.closures = {closure};
  const DayPlan plan = plan_day(in);
  const PlannedStretch& spot = only(plan);
  EXPECT_EQ(spot.end, local(14));
  EXPECT_EQ(spot.reaches.back().closed_why, "warm afternoons");
  EXPECT_FALSE(is_fished(spot.reaches.back()));
}

TEST(SpotDay, LeavesUnknownWaterUnknown) {
  DayInputs in = day_at_the_bend();
  in.records = {GaugeRecord{}};
  const DayPlan plan = plan_day(in);
  const PlannedStretch& spot = only(plan);
  EXPECT_EQ(spot.verdict, Verdict::Possible);
  for (const PlannedReach& hours : spot.reaches) {
    EXPECT_FALSE(hours.discharge.has_value());
    EXPECT_FALSE(hours.waters.at(0).depth.has_value());
    EXPECT_FALSE(hours.waters.at(0).choice.best.has_value());
  }
}

TEST(SpotDay, SaysThatTheDayIsOver) {
  DayInputs in = day_at_the_bend();
  in.now = local(19, 30);
  const DayPlan plan = plan_day(in);
  const PlannedStretch& spot = only(plan);
  EXPECT_EQ(spot.verdict, Verdict::RuledOut);
  EXPECT_THAT(spot.why, HasSubstr("the hours of the day are over"));
}

TEST(SpotDay, BeyondTheRiversEndsIsNoPlan) {
  DayInputs in = day_at_the_bend();
  in.river.spots[0].place = river_mile(30.0);
  const DayPlan plan = plan_day(in);
  EXPECT_TRUE(plan.stretches.empty());
  EXPECT_THAT(plan.why_no_stretch, HasSubstr("beyond the ends of the river"));
}

}  // namespace
}  // namespace floatwright
