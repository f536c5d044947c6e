#include "engine/wording/reach_rows.hpp"

#include <gtest/gtest.h>

#include <algorithm>
#include <map>

#include "engine/wording/rods_of_the_day.hpp"
#include "engine/wording/say_rig.hpp"
#include "tests/support/sample_plan.hpp"
#include "tests/support/sample_tackle.hpp"

namespace floatwright::testing {
namespace {

PlannedStretch stretch() { return sample_plan().stretches[0]; }

// Two reaches fished alike from end to end, taken from the sample's Cottonwood bend.
PlannedStretch two_alike() {
  PlannedStretch s = stretch();
  const PlannedReach bend = s.reaches[1];
  s.reaches = {bend, bend};
  s.reaches[1].name = "Second bend";
  return s;
}

TEST(ReachRows, PutWatersOfAReachTogetherWhenRigAndWayAreTheSame) {
  PlannedStretch s = stretch();
  s.reaches = {s.reaches[1]};
  const auto rows = reach_rows(s);
  ASSERT_EQ(rows.size(), 1u);
  EXPECT_EQ(rows[0].types.size(), 2u);
  EXPECT_LT(*rows[0].depth_low, *rows[0].depth_high);
}

TEST(ReachRows, KeepWatersApartThatAreFishedAnotherWay) {
  PlannedStretch s = stretch();
  s.reaches = {s.reaches[0]};
  EXPECT_EQ(reach_rows(s).size(), 2u);
}

TEST(ReachRows, PutReachesTogetherToo) {
  const PlannedStretch s = two_alike();
  const auto rows = reach_rows(s);
  ASSERT_EQ(rows.size(), 1u);
  EXPECT_EQ(rows[0].last->name, "Second bend");
}

TEST(ReachRows, AreKeptApartByAPortageALunchOrAClosedWater) {
  PlannedStretch s = two_alike();
  s.reaches[0].portage_at_end = true;
  EXPECT_EQ(reach_rows(s).size(), 2u);
  s = two_alike();
  s.reaches[1].lunch = true;
  EXPECT_EQ(reach_rows(s).size(), 2u);
  s = two_alike();
  s.reaches[1].closed_why = "closed";
  EXPECT_EQ(reach_rows(s).size(), 2u);
}

TEST(ReachRows, KeepAnIndicatorThatIsMovedApart) {
  PlannedStretch s = two_alike();
  for (PlannedReach& reach : s.reaches) reach.waters.resize(1);
  s.reaches[1].waters[0].choice.best->indicator_to_fly = feet(1.0);
  EXPECT_EQ(reach_rows(s).size(), 2u);
}

TEST(RodsOfTheDay, AreLetteredAndShowEachChange) {
  const auto plan = sample_plan();
  const auto rods = rods_of_the_day(plan.stretches[0], sample_tackle());
  ASSERT_EQ(rods.rods.size(), 3u);
  EXPECT_EQ(rods.rods[2].letter, "C");
  EXPECT_TRUE(rods.marks_tell);
  ASSERT_EQ(rods.changes.size(), 1u);
  EXPECT_EQ(rods.changes[0].reach->name, "Boulder garden");
  EXPECT_EQ(rods.changes[0].to.rig.fly, 1u);
}

// However they were packed; one that is not fished comes behind.
TEST(RodsOfTheDay, AreLetteredInTheOrderInWhichTheyAreTakenUp) {
  const auto letters = [](const PlannedStretch& float_trip) {
    std::map<std::string, std::size_t> rods;
    for (const RodInBoat& rod : rods_of_the_day(float_trip, sample_tackle()).rods) rods[rod.letter] = rod.rod;
    return rods;
  };
  PlannedStretch packed = stretch();
  const auto before = letters(packed);
  std::ranges::reverse(packed.rods.rods);
  std::ranges::reverse(packed.rigged);
  EXPECT_EQ(letters(packed), before);
  const std::size_t first = before.at("A");
  for (PlannedReach& reach : packed.reaches)
    std::erase_if(reach.waters, [&](const PlannedWater& water) {
      return water.choice.best && rod_of(sample_tackle(), water.choice.best->rig) == first;
    });
  EXPECT_EQ(letters(packed).at("C"), first);
}

TEST(RodsOfTheDay, UseLettersWhenTwoRodsHaveOneMark) {
  Tackle tackle = sample_tackle();
  tackle.rods[1].mark = "square";
  EXPECT_FALSE(rods_of_the_day(stretch(), tackle).marks_tell);
}

TEST(RodsOfTheDay, NeverChangeForAClosedReach) {
  PlannedStretch s = stretch();
  s.reaches.back().closed_why = "closed";
  EXPECT_TRUE(rods_of_the_day(s, sample_tackle()).changes.empty());
}

TEST(RodsOfTheDay, TakeInARodThatIsFishedButWasNotPacked) {
  PlannedStretch s = stretch();
  s.rods = {};
  s.rigged.clear();
  EXPECT_EQ(rods_of_the_day(s, sample_tackle()).rods.size(), 3u);
}

TEST(ReachRows, TellHoursAtASpotOnceWhereEachWaterIsFishedAsBefore) {
  PlannedStretch spot = stretch();
  spot.spot = Platform::Wading;
  const PlannedReach first = spot.reaches.front();
  PlannedReach kept_out = first;
  kept_out.kept_out = "more water may come from the dam";
  spot.reaches = {first, first, kept_out, first};
  const std::size_t one = [&] {
    PlannedStretch alone = spot;
    alone.reaches = {first};
    return reach_rows(alone).size();
  }();
  EXPECT_EQ(reach_rows(spot).size(), 2 * one + 1);
}

}  // namespace
}  // namespace floatwright::testing
