// Facts of the trade that the whole is held against: common practice, no source.
#include <gtest/gtest.h>

#include <algorithm>

#include "engine/sinking/cast_path.hpp"
#include "tests/engine/tackle/rack.hpp"

namespace floatwright {
namespace {

// Deepest reach of a weighted fly on a 12.5 ft tip with one mend and 3 s of feed, as a share of the depth. The trade's
// speed is taken for the vertical's mean; by the surface's every tip would reach some 15 % deeper.
double reach(double rate, double feet_per_second, double depth_ft) {
  Tackle tackle = rack::tackle();
  tackle.lines[rack::kTip5].sink_rate = inches_per_second(rate);
  const SurfaceSpeed surface = surface_speed(mean_feet_per_second(feet_per_second), {}, feet(depth_ft));
  const CastWater water{feet(depth_ft), surface, {}, Speed{}, celsius(10.0)};
  const Technique technique{Method::Swing, Mending::MendAndFeed, {}, {}, Platform::Anchored};
  const auto path = cast_path(tackle, {rack::kTip5, {}, rack::kWeighted, {}}, technique, water, metres(12), feet(9));
  EXPECT_TRUE(path);
  Length most;
  for (const CastSample& s : path->samples) most = std::max(most, s.fly_depth);
  return most / water.depth;
}

struct Said {
  double feet_per_second, depth_feet, rate;  // ft/s, ft, in/s
};
constexpr Said kSaid[] = {{2, 2, 3}, {2, 3, 3}, {2, 4, 4}, {2, 5, 5}, {2, 6, 5}, {3, 2, 3}, {3, 3, 4},
                          {3, 4, 5}, {3, 5, 7}, {4, 2, 4}, {4, 3, 5}, {4, 4, 7}, {4, 5, 8}};

// 0.58 rather than 0.6: the trade says "about".
TEST(Trade, TipsSaidToReachSixTenthsOfTheDepthDo) {
  for (const Said& said : kSaid)
    EXPECT_GT(reach(said.rate, said.feet_per_second, said.depth_feet), 0.58)
        << said.feet_per_second << " ft/s, " << said.depth_feet << " ft";
}

// In 2 ft even a tip of 1 to 2 in/s gets down.
TEST(Trade, TwoInchesASecondLessFallShortFromThreeFeetOn) {
  for (const Said& said : kSaid)
    if (said.depth_feet >= 3) {
      EXPECT_LT(reach(said.rate - 2.0, said.feet_per_second, said.depth_feet), 0.6)
          << said.feet_per_second << " ft/s, " << said.depth_feet << " ft";
    }
}

TEST(Trade, NoTipOfThatLengthGetsThereInSixFeetAtFourFeetASecond) { EXPECT_LT(reach(8, 4, 6), 0.6); }

// A count of one second on an intermediate line of 1 to 2 in/s is worth up to two inches.
TEST(Trade, ACountOfOneSecondOnAnIntermediateLineIsWorthUpToTwoInches) {
  Tackle tackle = rack::tackle();
  tackle.lines[rack::kFull].sink_rate = inches_per_second(2.0);
  const CastWater lake{feet(20), SurfaceSpeed{}, {}, Speed{}, celsius(10.0)};
  const auto counted = [&](double count) {
    const Technique technique{Method::Strip, Mending::Tight, seconds(count), metres_per_second(0.3),
                              Platform::Drifting};
    return in_inches(cast_path(tackle, {rack::kFull, {}, rack::kPlain, {}}, technique, lake, metres(12), feet(9))
                         ->samples.front()
                         .tip_depth);
  };
  EXPECT_GT(counted(10) - counted(9), 1.0);
  EXPECT_LE(counted(10) - counted(9), 2.0);
}

TEST(Trade, AHeavyFlyOnAFloatingLineGetsDownUntilTheLineComesTight) {
  const CastWater water{feet(4), surface_feet_per_second(3), {}, Speed{}, celsius(10.0)};
  const Technique technique{Method::Swing, Mending::MendAndFeed, {}, {}, Platform::Anchored};
  const auto path =
      cast_path(rack::tackle(), {rack::kFloating, {}, rack::kWeighted, {}}, technique, water, metres(12), feet(9));
  ASSERT_TRUE(path);
  Length most;
  for (const CastSample& s : path->samples) most = std::max(most, s.fly_depth);
  EXPECT_GT(most, feet(1.0));
  EXPECT_LT(path->samples.back().fly_depth, most * 0.5);
}

}  // namespace
}  // namespace floatwright
