#include "engine/choice/rig_in_water.hpp"

#include <gmock/gmock.h>

#include <random>

#include "tests/engine/tackle/rack.hpp"

namespace floatwright {
namespace {

const Judgement kJudgement;

KnownWater water(double depth_ft, double speed_ft_s) {
  const SurfaceSpeed speed = surface_feet_per_second(speed_ft_s);
  return {feet(depth_ft), speed, {}, Bed::Cobble, celsius(10.0), speed};
}
Technique way(Method method, Platform platform = Platform::Anchored) {
  return {method, Mending::Tight, {}, metres_per_second(0.3), platform};
}
RigInWater fished(const Rig& rig, const Technique& technique, const KnownWater& in) {
  auto found = rig_in_water(rack::tackle(), rig, technique, in, metres(12), kJudgement);
  EXPECT_TRUE(found) << (found ? "" : found.why_absent());
  return found ? *found : RigInWater{};
}

TEST(RigInWater, FishesATipThatSuitsTheWater) {
  const RigInWater found = fished({rack::kTip5, {}, rack::kWeighted, {}}, way(Method::Swing), water(4.0, 2.0));
  EXPECT_EQ(found.finding, Finding::Fishes);
  ASSERT_TRUE(found.in_zone);
  EXPECT_LE(found.in_zone->from, found.in_zone->to);
  EXPECT_LE(found.in_zone->in_all, found.in_zone->to);
  EXPECT_GT(found.scored.fly_depth.high, found.scored.fly_depth.best);
  EXPECT_TRUE(found.drawn);
}

TEST(RigInWater, SaysThatARigDoesNotReachTheFish) {
  const RigInWater found = fished({rack::kTip5, {}, rack::kPlain, {}}, way(Method::Swing), water(12.0, 2.5));
  EXPECT_EQ(found.finding, Finding::TooHigh);
  EXPECT_LT(found.scored.seconds, kJudgement.choice.least_seconds);
}

TEST(RigInWater, SaysThatNoFishHoldsInWaterThatFast) {
  EXPECT_EQ(fished({rack::kTip5, {}, rack::kWeighted, {}}, way(Method::Swing), water(3.0, 13.0)).finding,
            Finding::NoFish);
}

// Bounds of the prototype: 22 % at 3 in/s and 53 % at 1.5 in/s in water of 1 m/s.
TEST(RigInWater, BoundsTurbulenceByWhatWasFound) {
  const SurfaceSpeed metre = surface_metres_per_second(1.0);
  EXPECT_NEAR(turbulence_bound(inches_per_second(3.0), metre), 0.22, 1e-9);
  EXPECT_NEAR(turbulence_bound(inches_per_second(1.5), metre), 0.53, 1e-9);
  EXPECT_LT(turbulence_bound(inches_per_second(7.0), metre), 0.1);
  EXPECT_LE(turbulence_bound(inches_per_second(0.2), surface_metres_per_second(4.0)), 0.6);
  EXPECT_EQ(turbulence_bound(Speed{}, metre), 0.0);
}

// Common practice, no source: a weighted fly on a floating line gets down, but the surface keeps its hold on the line.
TEST(RigInWater, HoldsMoreOfAFloatingLineAtTheSurfaceThanOfATip) {
  const KnownWater in = water(4.0, 2.0);
  const auto floating = fished({rack::kFloating, {}, rack::kWeighted, {}}, way(Method::Swing), in).surface_hold;
  const auto tip = fished({rack::kTip5, {}, rack::kPlain, {}}, way(Method::Swing), in).surface_hold;
  const auto whole = fished({rack::kFull, {}, rack::kPlain, {}}, way(Method::Swing), in).surface_hold;
  ASSERT_TRUE(floating && tip && whole);
  EXPECT_GT(*floating, *tip);
  EXPECT_GT(*tip, *whole);
}

TEST(RigInWater, RefusesAWayThatALineIsNotFished) {
  const Tackle tackle = rack::tackle();
  const KnownWater in = water(4.0, 2.0);
  const auto why = [&](std::size_t line, Technique technique, const KnownWater& where) {
    return way_ruled_out(tackle, {line, {}, rack::kWeighted, {}}, technique, where, kJudgement).value_or("");
  };
  EXPECT_THAT(why(rack::kTip5, way(Method::Swing, Platform::Drifting), in), testing::HasSubstr("anchored or wading"));
  EXPECT_THAT(why(rack::kTip5, way(Method::Swing), water(4.0, 0.0)), testing::HasSubstr("stands still"));
  Technique mended = way(Method::Swing);
  mended.mending = Mending::OneMend;
  EXPECT_THAT(why(rack::kFull, mended, in), testing::HasSubstr("can't be mended"));
  KnownWater slow_edge = water(3.0, 1.0);
  slow_edge.boat_lane = surface_feet_per_second(3.0);
  EXPECT_THAT(why(rack::kTip5, way(Method::Strip, Platform::Drifting), slow_edge), testing::HasSubstr("outruns"));
  EXPECT_EQ(why(rack::kTip5, way(Method::Swing), in), "");
}

// No number that is none, whatever the water and the cast: speeds from 0 to 4 m/s, depths from 0.1 to 30 m.
TEST(RigInWater, AnswersInAnyWaterOrSaysWhyNot) {
  std::mt19937 random(7);
  const auto between = [&](double least, double most) {
    return std::uniform_real_distribution<double>(least, most)(random);
  };
  const Tackle tackle = rack::tackle();
  for (int i = 0; i < 300; ++i) {
    const SurfaceSpeed speed = surface_metres_per_second(i % 10 == 0 ? 0.0 : i % 10 == 1 ? 4.0 : between(0.0, 4.0));
    const KnownWater in{
        metres(i % 7 == 0 ? 0.1 : i % 7 == 1 ? 30.0 : between(0.1, 30.0)), speed, {}, Bed::Unknown, Absent{}, speed};
    const Method method = i % 2 == 0 ? Method::Swing : Method::Strip;
    const std::size_t line = i % 3 == 0 ? rack::kTip5 : i % 3 == 1 ? rack::kFull : rack::kFloating;
    const auto found = rig_in_water(tackle, {line, {}, i % 5 == 0 ? rack::kPlain : rack::kWeighted, {}}, way(method),
                                    in, metres(between(3.0, 30.0)), kJudgement);
    if (!found) {
      EXPECT_NE(found.why_absent(), "");
      continue;
    }
    const Band<Length>& fly = found->scored.fly_depth;
    ASSERT_TRUE(std::isfinite(fly.low.si()) && std::isfinite(fly.best.si()) && std::isfinite(fly.high.si())) << i;
    EXPECT_GE(fly.low, Length{});
    EXPECT_LE(fly.high, in.depth * (1.0 + 1e-9));
    EXPECT_TRUE(found->scored.seconds >= 0.0 && found->scored.seconds <= 60.0) << i;
  }
}

}  // namespace
}  // namespace floatwright
