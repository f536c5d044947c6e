#include "engine/trip/met_water.hpp"

#include <gtest/gtest.h>

#include <algorithm>

#include "tests/engine/trip/hand_made_day.hpp"

namespace floatwright {
namespace {

Passage first_passage(const RiverDay& day) { return passages(day, river_mile(12.0), river_mile(6.0)).front(); }

MetWater bank_of(const RiverDay& day, Instant t) {
  const Passage passage = first_passage(day);
  return met_water(day, passage, waters_of(day, passage)[1], t);
}

TEST(MetWater, IsThatOfTheNoteAtTheFlowOfTheNote) {
  HandMadeDay made;
  const RiverDay& day = made.day();
  const Passage passage = first_passage(day);
  const MetWater run = met_water(day, passage, waters_of(day, passage)[0], local(9));
  ASSERT_TRUE(run.to_fish.has_value());
  EXPECT_NEAR(in_feet(run.printed.depth->best), 4.5, 0.01);
  EXPECT_NEAR(in_feet_per_second(run.printed.surface_speed->best), 3.5, 0.01);
  EXPECT_LT(run.printed.depth->low, run.printed.depth->best);
  EXPECT_GT(run.printed.depth->high, run.printed.depth->best);
}

TEST(MetWater, BesideASideChannelIsThatOfTheNoteAtTheWholeRiversFlow) {
  HandMadeDay made;
  SideChannel side;
  side.id = side.name = "Willow Channel";
  side.leaves = river_mile(12.0);
  side.returns = river_mile(6.0);
  side.share_by_flow = {{cubic_feet_per_second(1800.0), 0.5}};
  made.river.side_channels = {side};
  made.flow = [](Instant) { return HandMadeDay::same(900.0); };  // in either thread: 1,800 in all
  const RiverDay& day = made.day();
  const Passage passage = first_passage(day);
  const MetWater run = met_water(day, passage, waters_of(day, passage)[0], local(9));
  ASSERT_TRUE(run.to_fish.has_value());
  EXPECT_NEAR(in_feet(run.printed.depth->best), 4.5, 0.01);
}

TEST(MetWater, BesideABankHasTheBoatInTheRun) {
  HandMadeDay made;
  const MetWater bank = bank_of(made.day(), local(9));
  ASSERT_TRUE(bank.to_fish.has_value());
  EXPECT_NEAR(in_feet_per_second(bank.to_fish->boat_lane.middle), 3.5, 0.01);
  EXPECT_NEAR(in_feet_per_second(bank.to_fish->lane.surface_speed.middle), 2.0, 0.01);
}

TEST(MetWater, IsNotWadedWhereItIsTooDeepOrFast) {
  HandMadeDay made;
  made.settings.preferences.anglers[0].wades = true;
  const RiverDay& day = made.day();
  const Passage passage = first_passage(day);
  const auto wades = [&](std::size_t water) {
    const MetWater met = met_water(day, passage, waters_of(day, passage)[water], local(9));
    const auto& platforms = met.to_fish->platforms;
    return std::find(platforms.begin(), platforms.end(), Platform::Wading) != platforms.end();
  };
  EXPECT_FALSE(wades(0));  // 4.5 ft at 3.5 ft/s
  EXPECT_TRUE(wades(1));   // 2.5 ft at 2.0 ft/s: under 6.5 ft2/s even by its surface speed
}

TEST(MetWater, IsNeitherWadedNorAnchoredInWhileADamsRiseIsDue) {
  HandMadeDay made;
  made.settings.preferences.anglers[0].wades = true;
  Dam dam;
  dam.place = river_mile(13.0);
  made.river.dams = {dam};
  DamFront front;
  front.place = river_mile(12.0);
  front.before = cubic_feet_per_second(1400.0);
  front.after = cubic_feet_per_second(1800.0);
  front.earliest = local(8);
  front.latest = local(9);
  made.fronts = {front, front};
  made.fronts[1].place = river_mile(6.0);
  made.fronts[1].latest = local(12);
  const MetWater bank = bank_of(made.day(), local(10));
  const auto& platforms = bank.to_fish->platforms;
  EXPECT_EQ(std::count(platforms.begin(), platforms.end(), Platform::Anchored), 0);
  EXPECT_EQ(std::count(platforms.begin(), platforms.end(), Platform::Wading), 0);
  EXPECT_EQ(std::count(platforms.begin(), platforms.end(), Platform::Drifting), 1);
}

Hatch mayflies() {
  Hatch hatch;
  hatch.name = "mayflies";
  hatch.season = {{4, 1}, {5, 31}};
  hatch.hours = {hours(12.0), hours(15.5)};
  hatch.least_temperature = fahrenheit(46.0);
  return hatch;
}

TEST(Hatch, IsOnInItsSeasonHoursAndWarmth) {
  HandMadeDay made;
  made.river.hatches = {mayflies()};
  EXPECT_EQ(hatch_at(made.day(), 0, local(11)), nullptr);
  ASSERT_NE(hatch_at(made.day(), 0, local(13)), nullptr);
  EXPECT_EQ(hatch_at(made.day(), 0, local(13))->name, "mayflies");
  made.water = [](Instant) { return HandMadeDay::warm(45.0); };
  EXPECT_EQ(hatch_at(made.day(), 0, local(13)), nullptr);
}

TEST(Clarity, IsWhatWasTypedElseTheNewestOfTheSensorElseUnknown) {
  HandMadeDay made;
  EXPECT_FALSE(clarity_near(made.day(), river_mile(6.0)).has_value());
  made.records[0].turbidity.times = {kNow};
  made.records[0].turbidity.values = {fnu(22.0)};
  ASSERT_TRUE(clarity_near(made.day(), river_mile(6.0)).has_value());
  EXPECT_NEAR(in_fnu(*clarity_near(made.day(), river_mile(6.0))), 22.0, 1e-9);
  made.settings.visibility = feet(6.0);
  EXPECT_LT(in_fnu(*clarity_near(made.day(), river_mile(6.0))), 5.0);  // clear
}

}  // namespace
}  // namespace floatwright
