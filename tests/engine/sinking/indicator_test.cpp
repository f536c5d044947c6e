#include "engine/sinking/indicator.hpp"

#include <gtest/gtest.h>

#include <cmath>

#include "tests/engine/tackle/rack.hpp"

namespace floatwright {
namespace {

CastWater run(double depth, double surface) {
  return {metres(depth), surface_metres_per_second(surface), {}, metres_per_second(surface), celsius(10.0)};
}
HungWeight hung(std::size_t fly, double shot_grams) {
  return *hung_weight(rack::tackle().flies[fly], grams(shot_grams), water_at(celsius(10.0)));
}

TEST(Indicator, HangsStraightDownInWaterOfOneSpeed) {
  CastWater even = run(2.0, 0.8);
  even.profile.law = Profile::Law::Uniform;
  const IndicatorDrift drift = indicator_drift(metres(1.8), hung(rack::kNymph, 0.0), even);
  EXPECT_NEAR(drift.fly_depth.si(), 1.8, 1e-3);
  EXPECT_NEAR(drift.indicator.si(), 0.8, 1e-3);
}

TEST(Indicator, DriftsBetweenTheSpeedOfTheSurfaceAndOfTheFlysWater) {
  const IndicatorDrift drift = indicator_drift(metres(1.8), hung(rack::kNymph, 0.2), run(2.0, 0.8));
  EXPECT_LT(drift.indicator.si(), 0.8);
  EXPECT_GT(drift.indicator.si(), 0.8 * std::pow(0.1, 1.0 / 6.0));
}

TEST(Indicator, MoreShotHangsTheFlyDeeperOnTheSameLeader) {
  Length before;
  for (const double shot : {0.0, 0.2, 0.4, 0.8}) {
    const Length now = indicator_drift(metres(1.8), hung(rack::kNymph, shot), run(2.0, 1.5)).fly_depth;
    EXPECT_GT(now, before);
    before = now;
  }
}

TEST(Indicator, TheLeaderIsInHalfFeetAndNeverLaysTheFlyOnTheBed) {
  for (const double depth : {0.4, 0.8, 1.3, 2.0, 3.0}) {
    for (const double speed : {0.2, 0.8, 1.5}) {
      const CastWater water = run(depth, speed);
      const Length leader = indicator_leader(hung(rack::kNymph, 0.0), water, feet(9.0));
      EXPECT_NEAR(std::remainder(in_feet(leader), 0.5), 0.0, 1e-6);
      EXPECT_LE(leader, std::max(water.depth * 1.5, feet(0.5)));
      EXPECT_LE(leader, feet(9.0) + metres(1.0));
      EXPECT_LE(indicator_drift(leader, hung(rack::kNymph, 0.0), water).fly_depth.si(), depth - 0.10 + 0.006);
    }
  }
}

TEST(Indicator, KeepsTheLeaderOfTheMiddleCaseForTheOthers) {
  const Technique technique{Method::Indicator, Mending::Tight, {}, {}, Platform::Drifting};
  const auto water = tabled_water(metres(1.0), surface_metres_per_second(0.5), {}, celsius(10.0));
  const DriftLimits limits;
  const auto paths = cast_paths(rack::tackle(), {rack::kNymphTaper, {}, rack::kNymph, {}}, {&technique, 1},
                                {*water, Speed{}, metres(12), feet(9), limits, SetLeader{feet(4.5), {}}});
  const auto& path = paths.front();
  ASSERT_TRUE(path);
  EXPECT_EQ(path->indicator_to_fly, feet(4.5));
  EXPECT_GT(path->samples.back().fly_depth, metres(1.0));
  EXPECT_EQ(path->samples.back().t, seconds(40.0));
}

// Under other lines and from other platforms the same leader drifts alike: its drift may be handed on.
TEST(Indicator, DriftsTheSameWhereItsDriftIsHandedOn) {
  const Technique technique{Method::Indicator, Mending::Tight, {}, {}, Platform::Anchored};
  const auto water = tabled_water(metres(1.3), surface_metres_per_second(0.6), {}, celsius(10.0));
  const DriftLimits limits;
  CastSetting setting{*water, Speed{}, metres(12), feet(9), limits, {}};
  const auto cast = [&] {
    return *cast_paths(rack::tackle(), {rack::kNymphTaper, {}, rack::kNymph, {}}, {&technique, 1}, setting).front();
  };
  const CastPath solved = cast();
  setting.leader_set = set_leader(solved);
  ASSERT_TRUE(setting.leader_set->drift);
  const CastPath handed_on = cast();
  ASSERT_EQ(handed_on.samples.size(), solved.samples.size());
  EXPECT_EQ(handed_on.hangs, solved.hangs);
  for (std::size_t i = 0; i < solved.samples.size(); ++i) {
    EXPECT_EQ(handed_on.samples[i].fly_depth, solved.samples[i].fly_depth);
    EXPECT_EQ(handed_on.samples[i].through_water, solved.samples[i].through_water);
  }
}

}  // namespace
}  // namespace floatwright
