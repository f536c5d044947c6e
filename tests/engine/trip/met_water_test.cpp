#include "engine/trip/met_water.hpp"

#include <gmock/gmock.h>

#include <algorithm>
#include <cmath>

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

SideChannel willow_channel() {
  SideChannel side;
  side.id = side.name = "Willow Channel";
  side.leaves = river_mile(12.0);
  side.returns = river_mile(6.0);
  return side;
}

// By hand: the note's 1,800 cfs sent half down either thread, 900 cfs. Now 1,200 cfs run in the stem and 2,400 cfs by the
// gauge; 1 ft3/s more of the stem's own water raises it, not the whole river's: by mean depth c Q^0.40 with c from the
// note, whose run is 1.4 times as deep as the channel, 4.5/1.4 ((1200/900)^0.40 - 1) = 0.392 ft on 4.5.
TEST(MetWater, RisesWithTheFlowOfItsOwnThread) {
  HandMadeDay made;
  SideChannel side = willow_channel();
  side.share_by_flow = {{cubic_feet_per_second(1800.0), 0.5}};
  made.river.side_channels = {side};
  made.flow = [](Instant) { return HandMadeDay::same(1200.0); };
  const RiverDay& day = made.day();
  const Passage passage = first_passage(day);
  const MetWater run = met_water(day, passage, waters_of(day, passage)[0], local(9));
  EXPECT_NEAR(in_feet(run.printed.depth->best), 4.892, 0.005);
  EXPECT_NEAR(in_cubic_feet_per_second(*run.printed.noted_at), 1800.0, 1e-6);
}

TEST(WholeFlow, IsTheSameSeenFromEitherThread) {
  HandMadeDay made;
  made.river.side_channels = {willow_channel()};
  made.flow = [](Instant) { return HandMadeDay::same(900.0); };
  const RiverDay& day = made.day();
  for (std::size_t r = 0; r < day.graph.reaches.size(); ++r) {
    const bool divided = day.graph.reaches[r].from > river_mile(6.0);
    EXPECT_NEAR(in_cubic_feet_per_second(whole_flow(day, r, local(9))->middle), divided ? 1800.0 : 900.0, 1e-6) << r;
  }
}

// Two gauges of known area, and no note between them. By hand for mile 12 to 6 from Bieger et al. 2015 (bankfull W 2.70
// A^0.352, D 0.30 A^0.213, A in km2; from memory) run full at 1.5 m/s, and Leopold & Maddock's exponents: 500 mi2 at mile
// 14 and 900 at 0.5 make 737.0 mi2 at mile 6, 1,908.9 km2: 38.57 m by 1.4994 m, full at 86.74 m3/s. At 1,800 cfs (50.97
// m3/s) 1.2122 m in the mean and 1.2519 m/s: Froude number 0.363, a run; 1.697 m deep in the lane, 1.473 m/s at the surface.
HandMadeDay undescribed_day() {
  HandMadeDay made;
  made.river.notes.erase(made.river.notes.begin());
  GaugeSite head = made.river.gauges[0];
  head.id = "head";
  head.place = river_mile(14.0);
  head.drainage_area = square_miles(500.0);
  made.river.gauges.insert(made.river.gauges.begin(), head);
  made.records.insert(made.records.begin(), made.records[0]);
  return made;
}

TEST(MetWater, NobodyDescribedIsTheLikelyOneOfItsChannel) {
  HandMadeDay made = undescribed_day();
  const RiverDay& day = made.day();
  const Passage passage = first_passage(day);
  EXPECT_FALSE(is_described(day, passage));
  ASSERT_EQ(waters_of(day, passage).size(), 1u);
  const MetWater met = met_water(day, passage, waters_of(day, passage)[0], local(9));
  EXPECT_EQ(met.printed.type, WaterType::Run);
  EXPECT_EQ(met.printed.source, DepthSource::Guessed);
  EXPECT_FALSE(met.printed.noted_at.has_value());
  ASSERT_TRUE(met.to_fish.has_value());
  EXPECT_NEAR(in_metres(met.printed.depth->best), 1.697, 0.002);
  EXPECT_NEAR(in_metres_per_second(met.printed.surface_speed->best), 1.473, 0.002);
  EXPECT_NEAR(met.printed.depth->high / met.printed.depth->best, std::exp(1.2816 * 0.30), 1e-3);
}

TEST(MetWater, NobodyDescribedStaysUnknownWithNothingButAFlow) {
  HandMadeDay made;
  made.river.notes.clear();
  const RiverDay& day = made.day();
  EXPECT_TRUE(waters_of(day, first_passage(day)).empty());
}

// A guess of 2 ft at 2 ft/s (4 ft2/s by its surface, 3.4 in the mean) is within 6.5 ft2/s; the upper ends of its bands,
// each exp(1.2816 x 0.30) = 1.469 times as much, are not: 3.4 x 2.158 = 7.3.
TEST(MetWater, IsWadedOnAGuessOnlyWhereEvenItsUpperEndCanBe) {
  HandMadeDay made;
  made.settings.preferences.anglers[0].wades = true;
  const auto wades = [&](DepthSource source) {
    made.river.notes[0].waters = {noted(WaterType::Run, 1.0, 2.0, 2.0, 1800.0)};
    made.river.notes[0].waters[0].notes[0].source = source;
    const RiverDay& day = made.day();
    const Passage passage = first_passage(day);
    const auto platforms = met_water(day, passage, waters_of(day, passage)[0], local(9)).to_fish->platforms;
    return std::find(platforms.begin(), platforms.end(), Platform::Wading) != platforms.end();
  };
  EXPECT_TRUE(wades(DepthSource::Noted));
  EXPECT_FALSE(wades(DepthSource::Guessed));
}

TEST(MetWater, BesideABankHasTheBoatInTheRun) {
  HandMadeDay made;
  const MetWater bank = bank_of(made.day(), local(9));
  ASSERT_TRUE(bank.to_fish.has_value());
  EXPECT_NEAR(in_feet_per_second(bank.to_fish->boat_lane.middle), 3.5, 0.01);
  EXPECT_NEAR(in_feet_per_second(bank.to_fish->lane.surface_speed.middle), 2.0, 0.01);
}

TEST(MetWater, IsNotFishedFromAnAnchorOrWadedWhileItComesUp) {
  HandMadeDay made;
  made.settings.preferences.anglers[0].wades = true;
  const RiverDay& day = made.day();
  Passage passage = first_passage(day);
  const auto stands = [&] {
    const MetWater bank = met_water(day, passage, waters_of(day, passage)[1], local(9));
    const auto& platforms = bank.to_fish->platforms;
    return std::any_of(platforms.begin(), platforms.end(), [](Platform p) { return p == Platform::Anchored || p == Platform::Wading; });
  };
  EXPECT_TRUE(stands());
  passage.rises = true;
  EXPECT_FALSE(stands());
}

TEST(MetWater, IsNotDriftedOverInAStrongWind) {
  HandMadeDay made;
  made.settings.preferences.platforms = {Platform::Drifting, Platform::Held};
  Weather weather;
  weather.wind.times = {local(8), local(12)};
  weather.wind.values = {miles_per_hour(19), miles_per_hour(21)};
  RiverDay day = made.day();
  day.weather = &weather;
  const auto platforms_at = [&](Instant t) {
    const Passage passage = first_passage(day);
    return met_water(day, passage, waters_of(day, passage)[1], t).to_fish->platforms;
  };
  EXPECT_THAT(platforms_at(local(8)), ::testing::ElementsAre(Platform::Drifting, Platform::Held));
  EXPECT_THAT(platforms_at(local(12)), ::testing::ElementsAre(Platform::Held));
  made.settings.preferences.platforms = {Platform::Drifting};
  EXPECT_THAT(platforms_at(local(12)), ::testing::ElementsAre(Platform::Drifting)) << "nothing else is allowed";
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
  EXPECT_TRUE(hatches_at(made.day(), 0, local(11)).empty());
  ASSERT_EQ(hatches_at(made.day(), 0, local(13)).size(), 1u);
  EXPECT_EQ(hatches_at(made.day(), 0, local(13))[0]->name, "mayflies");
  made.river.hatches.push_back(mayflies());
  EXPECT_EQ(hatches_at(made.day(), 0, local(13)).size(), 2u);
  made.water = [](Instant) { return HandMadeDay::warm(45.0); };
  EXPECT_TRUE(hatches_at(made.day(), 0, local(13)).empty());
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
