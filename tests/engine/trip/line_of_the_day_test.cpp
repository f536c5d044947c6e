// Which line is drawn: of the rigs that have a shape in the water the one fished longest, where it is fished longest.
#include <gtest/gtest.h>

#include "engine/plan_day.hpp"
#include "tests/engine/trip/small_river.hpp"

namespace floatwright::testing {
namespace {

Duration minutes_of(const Rig& rig, const PlannedStretch& floated) {
  Duration sum{};
  for (const PlannedReach& reach : floated.reaches)
    for (const PlannedWater& water : reach.waters)
      if (water.choice.best && water.choice.best->rig == rig) sum = sum + water.fishing;
  return sum;
}

bool on_the_surface(const ScoredRig& rig) { return rig.technique.method == Method::Dry; }

TEST(LineOfTheDay, IsTheRigFishedLongestWhereItIsFishedLongest) {
  const DayPlan plan = plan_day(small_day());
  const PlannedStretch& floated = plan.stretches.front();
  ASSERT_TRUE(floated.line);
  const PlannedWater& there = floated.reaches.at(floated.line->reach).waters.at(floated.line->water);
  ASSERT_TRUE(there.choice.best);
  EXPECT_EQ(floated.line->line.rig.rig, there.choice.best->rig);
  const Duration drawn = minutes_of(there.choice.best->rig, floated);
  for (const PlannedReach& reach : floated.reaches) {
    for (const PlannedWater& water : reach.waters) {
      if (!water.choice.best || on_the_surface(*water.choice.best)) continue;
      EXPECT_LE(minutes_of(water.choice.best->rig, floated), drawn);
      if (water.choice.best->rig == there.choice.best->rig) {
        EXPECT_LE(water.fishing, there.fishing);
      }
    }
  }
}

TEST(LineOfTheDay, IsNoneWhereOnlyADryFlyIsFished) {
  DayInputs in = small_day();
  in.settings.preferences.methods = {{Method::Dry, 1.0}};
  const DayPlan plan = plan_day(in);
  const PlannedStretch& floated = plan.stretches.front();
  ASSERT_GT(floated.fished, Duration{}) << "a dry fly is fished";
  EXPECT_FALSE(floated.line);
}

}  // namespace
}  // namespace floatwright::testing
