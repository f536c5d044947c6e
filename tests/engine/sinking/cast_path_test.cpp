#include "engine/sinking/cast_path.hpp"

#include <gtest/gtest.h>

#include <algorithm>
#include <cmath>

#include "engine/sinking/stream.hpp"
#include "tests/engine/tackle/rack.hpp"

namespace floatwright {
namespace {

constexpr Length kCast = metres(12.0), kRod = feet(9.0);

CastWater run(double depth = 1.2, double surface = 0.9, double boat = 0.0) {
  return {metres(depth), surface_metres_per_second(surface), {}, metres_per_second(boat), celsius(10.0)};
}
Technique swing(Mending mending = Mending::Tight) { return {Method::Swing, mending, {}, {}, Platform::Anchored}; }
Technique strip(double count, double speed = 0.3) {
  return {Method::Strip, Mending::Tight, seconds(count), metres_per_second(speed), Platform::Drifting};
}
CastPath path(std::size_t line, std::size_t fly, const Technique& technique, const CastWater& water) {
  const auto found = cast_path(rack::tackle(), {line, {}, fly, {}}, technique, water, kCast, kRod);
  EXPECT_TRUE(found) << (found ? "" : found.why_absent());
  return found ? *found : CastPath{};
}
Length deepest(const CastPath& p) {
  Length most;
  for (const CastSample& s : p.samples) most = std::max(most, s.fly_depth);
  return most;
}

TEST(Swing, GoesRoundToStraightDownstreamAndStaysThreeSeconds) {
  const CastPath p = path(rack::kTip5, rack::kWeighted, swing(), run());
  EXPECT_NEAR(in_degrees(p.samples.front().bearing), 70.0, 1e-6);
  EXPECT_LT(in_degrees(p.samples.back().bearing), 8.0);
  EXPECT_NEAR((p.samples.back().t - p.time_to_hang_down).si(), 3.0, 1e-9);
  for (std::size_t i = 1; i < p.samples.size(); ++i) EXPECT_LE(p.samples[i].bearing, p.samples[i - 1].bearing);
}

TEST(Swing, FishesDeeperWithTheRateOfTheTip) {
  for (const Mending mending : {Mending::Tight, Mending::OneMend, Mending::MendAndFeed}) {
    const Length three = deepest(path(rack::kTip3, rack::kWeighted, swing(mending), run()));
    const Length five = deepest(path(rack::kTip5, rack::kWeighted, swing(mending), run()));
    EXPECT_GT(five, three);
    EXPECT_GT(deepest(path(rack::kTip7, rack::kWeighted, swing(mending), run())), five);
  }
}

TEST(Swing, FishesShallowerInFasterWater) {
  EXPECT_GT(deepest(path(rack::kTip5, rack::kWeighted, swing(), run(1.2, 0.6))),
            deepest(path(rack::kTip5, rack::kWeighted, swing(), run(1.2, 1.2))));
}

TEST(Swing, AMendAndFeedIsDeeperTenSecondsInThanATightLine) {
  const auto at_ten = [](const CastPath& p) {
    return std::find_if(p.samples.begin(), p.samples.end(), [](const CastSample& s) { return s.t >= seconds(8.0); })
        ->fly_depth;
  };
  EXPECT_GT(at_ten(path(rack::kTip5, rack::kWeighted, swing(Mending::MendAndFeed), run())),
            at_ten(path(rack::kTip5, rack::kWeighted, swing(), run())));
}

// A mend costs nothing to look at beside a tight swing: what both need is solved once, and is the same as alone.
TEST(Swing, IsTheSameAloneAndBesideOthers) {
  const auto water = tabled_water(metres(1.2), surface_metres_per_second(0.9), {}, celsius(10.0));
  const DriftLimits limits;
  const std::vector<Technique> all{swing(), swing(Mending::OneMend), swing(Mending::MendAndFeed)};
  for (const std::size_t line : {rack::kTip5, rack::kFull, rack::kFloating}) {
    const auto together =
        cast_paths(rack::tackle(), {line, {}, rack::kWeighted, {}}, all, {*water, Speed{}, kCast, kRod, limits, {}});
    for (std::size_t i = 0; i < all.size(); ++i) {
      const CastPath alone = path(line, rack::kWeighted, all[i], run());
      ASSERT_EQ(together[i]->samples.size(), alone.samples.size());
      for (std::size_t k = 0; k < alone.samples.size(); ++k)
        EXPECT_EQ(together[i]->samples[k].fly_depth, alone.samples[k].fly_depth);
    }
  }
}

TEST(Swing, EndsInWaterThatDoesNotMove) {
  const CastPath p = path(rack::kTip5, rack::kWeighted, swing(), run(1.2, 0.0));
  EXPECT_LE(p.samples.back().t, seconds(60.0));
  for (const CastSample& s : p.samples)
    EXPECT_TRUE(std::isfinite(s.fly_depth.si()) && std::isfinite(s.through_water.si()));
}

// Seen from the rod the line's tangential pace leaves U sqrt(cos^2 + 0.25 sin^2) at the surface; a fly near it feels
// that.
// Everything lands moving with the surface; hanging straight downstream the fly stands and the whole stream passes it.
TEST(Swing, TheFlyGoesWithTheWaterAtFirstAndStandsInItAtTheEnd) {
  const CastWater water = run(1.2, 0.9);
  const CastPath p = path(rack::kFloating, rack::kPlain, swing(), water);
  EXPECT_NEAR(p.samples.front().through_water.si(), 0.0, 1e-6);
  EXPECT_NEAR(p.samples.front().over_ground.si(), 0.9, 1e-6);
  EXPECT_LT(p.samples.back().over_ground.si(), 0.35);
  EXPECT_GT(p.samples.back().through_water.si(), 0.8);
}

TEST(Strip, AFullSinkingLineHoldsItsLevelWhereATipIsDrawnUp) {
  const CastWater lake = run(6.0, 0.0);
  const auto change_over_half = [&](std::size_t line) {
    const CastPath p = path(line, rack::kPlain, strip(20.0, 0.6), lake);
    return (p.samples[p.samples.size() / 2].tip_depth - p.samples.front().tip_depth).si();
  };
  EXPECT_GT(change_over_half(rack::kFull), -0.05);
  EXPECT_LT(change_over_half(rack::kTip7), -0.05);
}

TEST(Strip, EndsTwoMetresFromTheRodTip) {
  const CastPath p = path(rack::kTip5, rack::kWeighted, strip(3.0, 0.3), run(1.2, 0.9, 0.9));
  EXPECT_NEAR(p.samples.back().t.si(), (12.0 - 2.0) / 0.3, 0.1);  // s, a step is at most 0.08
}

TEST(Strip, ACountSinksTheTipAtNineTenthsOfItsRate) {
  const CastPath p = path(rack::kTip5, rack::kWeighted, strip(6.0), run(1.2, 0.9, 0.9));
  EXPECT_NEAR(p.samples.front().tip_depth.si(), 0.9 * 0.127 * 6.0, 0.06);  // m; a chain of nodes does 0.87 to 0.99
}

TEST(Strip, FromADriftingBoatTheTipSinksDeeperThanFromAnchor) {
  EXPECT_GT(deepest(path(rack::kTip5, rack::kWeighted, strip(6.0), run(3.0, 0.9, 0.9))),
            deepest(path(rack::kTip5, rack::kWeighted, strip(6.0), run(3.0, 0.9, 0.0))));
}

TEST(TightLine, GoesNoDeeperThanTenCentimetresOverTheBed) {
  const Technique technique{Method::TightLine, Mending::Tight, {}, {}, Platform::Wading};
  const auto p = cast_path(rack::tackle(), {rack::kThin, {}, rack::kHeavyNymph, grams(0.4)}, technique, run(0.6, 0.5),
                           metres(8), feet(10));
  ASSERT_TRUE(p);
  EXPECT_NEAR(deepest(*p).si(), 0.5, 1e-6);
}

TEST(TightLine, AThinLineLeadsLongerThanOneThatSags) {
  const Technique technique{Method::TightLine, Mending::Tight, {}, {}, Platform::Wading};
  EXPECT_GT(path(rack::kThin, rack::kHeavyNymph, technique, run()).samples.back().t,
            path(rack::kFloating, rack::kHeavyNymph, technique, run()).samples.back().t);
}

// (1 + 2) x 1.5 m over a quarter of the surface speed, from anchor: 4.5/0.225 = 20 s; 1.2 casts at 0.9 m/s are 16 s.
TEST(Dry, FloatsUntilItDragsOrTheLineIsOut) {
  const CastPath p =
      path(rack::kDoubleTaper, rack::kDry, {Method::Dry, Mending::Tight, {}, {}, Platform::Anchored}, run());
  EXPECT_NEAR(p.samples.back().t.si(), 16.0, 1e-9);
  EXPECT_EQ(deepest(p), Length{});
}

TEST(CastPath, SaysWhyItHasNoAnswer) {
  Tackle tackle = rack::tackle();
  tackle.flies[rack::kWeighted].mass.reset();
  EXPECT_EQ(cast_path(tackle, {rack::kTip5, {}, rack::kWeighted, {}}, swing(), run(), kCast, kRod).why_absent(),
            "no mass is given for the weighted streamer");
  EXPECT_EQ(cast_path(rack::tackle(), {rack::kTip5, {}, 0, {}}, swing(), run(0.0), kCast, kRod).why_absent(),
            "the water has no depth");
  EXPECT_EQ(cast_path(rack::tackle(), {rack::kTip5, {}, 0, {}}, strip(3.0, 0.0), run(), kCast, kRod).why_absent(),
            "no speed of stripping is given");
}

TEST(CastPath, IsFiniteAndEvenInTimeForEveryRigInEveryWater) {
  const Tackle tackle = rack::tackle();
  for (const Technique& technique :
       {swing(Mending::OneMend), strip(0.0), strip(10.0, 0.6), Technique{Method::Indicator, {}, {}, {}, Platform::Held},
        Technique{Method::TightLine, {}, {}, {}, Platform::Held}, Technique{Method::Dry, {}, {}, {}, Platform::Held}}) {
    for (const Rig& rig : rigs_for(tackle, technique.method)) {
      for (const CastWater& water :
           {run(0.3, 0.05), run(0.5, 0.15), run(0.9, 0.15), run(0.5, 1.8, 0.9), run(4.0, 0.3, 0.6), run(1.0, 0.0)}) {
        const auto p = cast_path(tackle, rig, technique, water, metres(9.0), kRod);
        ASSERT_TRUE(p) << p.why_absent();
        const double step = (p->samples[1].t - p->samples[0].t).si();
        for (std::size_t i = 0; i < p->samples.size(); ++i) {
          const CastSample& s = p->samples[i];
          EXPECT_TRUE(std::isfinite(s.fly_depth.si() + s.tip_depth.si() + s.over_ground.si() + s.through_water.si()));
          EXPECT_NEAR(s.t.si(), step * static_cast<double>(i), 1e-6);
        }
      }
    }
  }
}

}  // namespace
}  // namespace floatwright
