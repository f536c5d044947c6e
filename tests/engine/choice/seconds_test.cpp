// Seconds worked out on paper: a fly that stays at one depth, in a zone of known edges.
#include "engine/choice/seconds.hpp"

#include <gmock/gmock.h>

#include <cmath>
#include <random>

#include "engine/choice/fly_depth.hpp"
#include "engine/choice/pace.hpp"
#include "engine/choice/scatter.hpp"
#include "tests/engine/choice/hand_made.hpp"

namespace floatwright {
namespace {

const Judgement kJudgement;
constexpr double kExact = 1e-9;

Zone zone_2_m() {
  return {metres(2), metres(0.24), metres(0.8), metres_per_second(0.3), 1.0};
}  // full to 0.64, none at 1.04

Fishing stripping(std::vector<double> scatter = {1.0}) {
  Fishing fishing;
  fishing.method = Method::Strip;
  fishing.bed = Bed::Gravel;  // 0.03 snags a second
  fishing.easy = metres_per_second(0.6);
  fishing.paid = seconds(6);
  fishing.scatter = std::move(scatter);
  return fishing;
}

CaseSeconds of(const Fishing& fishing, const CastPath& path) {
  return seconds_of(fishing, {&path, zone_2_m()}, kJudgement);
}

// 24 s in the zone of a cast of 30 s: 60 x 24/30 = 48 s a minute, all of them ideal.
TEST(Seconds, AreTheTimeInTheZoneOverTheTimeSpent) {
  const CastPath path = steady_path(seconds(24), metres(1.5), metres(1.0), metres_per_second(0.3));
  const CaseSeconds found = of(stripping(), path);
  EXPECT_NEAR(found.seconds, 48.0, kExact);
  EXPECT_NEAR(found.ideal, 48.0, kExact);
  EXPECT_EQ(found.snag_per_cast, 0.0);
  EXPECT_NEAR(in_metres(found.fly_depth), 1.5, kExact);
}

// Height 0.84 m is half way down from 0.64 to 1.04; pace 0.9 m/s is exp(-1).
TEST(Seconds, FadeWithHeightAndPace) {
  const CastPath path = steady_path(seconds(24), metres(1.16), metres(0.5), metres_per_second(0.9));
  EXPECT_NEAR(of(stripping(), path).seconds, 60 * 0.5 * std::exp(-1.0) * 24 / 30, 1e-6);
  EXPECT_NEAR(of(stripping(), path).ideal, 60 * std::exp(-1.0) * 24 / 30, 1e-6);
}

// On the bed all the time: S = exp(-0.03 t), integral (1 - S)/0.03, w 0.2, and the snag costs 30 s.
TEST(Seconds, AreLostToSnags) {
  const CastPath path = steady_path(seconds(24), metres(2.4), metres(1.0), metres_per_second(0.3));
  const double S = std::exp(-0.03 * 24), fished = (1 - S) / 0.03;
  const CaseSeconds found = of(stripping(), path);
  EXPECT_NEAR(found.seconds, 60 * 0.2 * fished / (6 + fished + 30 * (1 - S)), 1e-6);
  EXPECT_NEAR(found.snag_per_cast, 1 - S, 1e-9);
  EXPECT_NEAR(found.ideal, 48.0, kExact);
}

TEST(Seconds, CountATipOnTheBedAsWell) {
  const CastPath path = steady_path(seconds(24), metres(1.5), metres(1.98), metres_per_second(0.3));
  EXPECT_NEAR(of(stripping(), path).snag_per_cast, 1 - std::exp(-0.03 * 24), 1e-9);
}

// Depth goes on past the bed before the scatter: a line that hangs at 1.5 depths is on the bed in all five members,
// while one clamped to the bed first would be lifted into the zone by the members under 1.
TEST(Seconds, ScatterALineBeforeTheBedStopsIt) {
  const std::vector<double> factors = scatter_factors({}, Lane{}, kJudgement.scatter);
  const CastPath path = steady_path(seconds(24), metres(3.0), metres(1.0), metres_per_second(0.3));
  const double S = std::exp(-0.03 * 24), fished = (1 - S) / 0.03;
  // Members: 3.0 x exp(-1.28 sd) = 3.0 x 0.68 = 2.03 m is still under the bed at sd 0.303.
  EXPECT_NEAR(of(stripping(factors), path).seconds, 60 * 0.2 * fished / (6 + fished + 30 * (1 - S)), 1e-6);
}

// Two members, one in the zone and one over it: the ratio is of the means, 60 x 12/30 = 24.
TEST(Seconds, AreTheRatioOfMeansOverMembers) {
  const CastPath path = steady_path(seconds(24), metres(1.5), metres(0.5), metres_per_second(0.3));
  EXPECT_NEAR(of(stripping({1.0, 0.5}), path).seconds, 24.0, kExact);
}

// 23 s in 32 slices of 0.71875 s. The last four hang below the rod at 0.3; before them the slice from 90 to 0 degrees
// has 45 and counts in full.
TEST(Seconds, OfASwingCountLessWhileItHangsBelowTheRod) {
  CastPath path = steady_path(seconds(23), metres(1.5), metres(1.0), metres_per_second(0.3));
  for (std::size_t i = 28; i <= 32; ++i) path.samples[i].bearing = degrees(0);
  Fishing fishing = stripping();
  fishing.method = Method::Swing;
  EXPECT_NEAR(of(fishing, path).seconds, 60 * (28 + 0.3 * 4) * 0.71875 / 29.0, 1e-9);
}

TEST(Seconds, OfAnIndicatorNeverGoBelowItsLeader) {
  CastPath path = steady_path(seconds(24), metres(1.9), metres(0), metres_per_second(0.0));
  path.indicator_to_fly = metres(1.92);
  Fishing fishing = stripping({1.0, 1.2});
  fishing.method = Method::Indicator;
  EXPECT_EQ(of(fishing, path).snag_per_cast, 0.0);  // 2.28 m would lie on the bed
}

TEST(Seconds, OfThreeCasesAreWeightedThreeFourThree) {
  const CastPath in = steady_path(seconds(24), metres(1.5), metres(1.0), metres_per_second(0.3));
  const CastPath over = steady_path(seconds(24), metres(0.3), metres(0.1), metres_per_second(0.3));
  const FishedCase good{&in, zone_2_m()}, none{&over, zone_2_m()};
  const EffectiveSeconds found = effective_seconds(stripping(), {good, none, good}, kJudgement);
  EXPECT_NEAR(found.seconds, 0.6 * 48.0, kExact);
  EXPECT_NEAR(found.efficiency, 0.6, kExact);
}

TEST(Seconds, OfACaseThatCannotBeFishedAreNoneButCountAsTime) {
  const CastPath in = steady_path(seconds(24), metres(1.5), metres(1.0), metres_per_second(0.3));
  const FishedCase good{&in, zone_2_m()}, dry{nullptr, zone_2_m()};
  EXPECT_NEAR(effective_seconds(stripping(), {dry, good, good}, kJudgement).efficiency, 0.7, kExact);
}

TEST(Seconds, HaveNoEfficiencyWhereTheIdealIsNone) {
  const CastPath path = steady_path(seconds(0), metres(1.5), metres(1.0), metres_per_second(0.3));
  const FishedCase one{&path, zone_2_m()};
  const EffectiveSeconds found = effective_seconds(stripping(), {one, one, one}, kJudgement);
  EXPECT_EQ(found.seconds, 0.0);
  EXPECT_EQ(found.efficiency, 0.0);
}

// The sum as docs/equations.md has it, one member and one slice after the other.
CaseSeconds plainly(const Fishing& fishing, const CastPath& path, const Zone& zone) {
  const double h = in_metres(zone.depth), rate = kJudgement.snag.rate_per_s.gravel;
  double effective = 0, spent = 0, snagged = 0, ideal = 0, out = 0;
  for (const double scatter : fishing.scatter) {
    double unsnagged = 1;
    for (std::size_t i = 1; i < path.samples.size(); ++i) {
      const CastSample &a = path.samples[i - 1], &b = path.samples[i];
      const double dt = in_seconds(b.t - a.t), fly = scatter * 0.5 * in_metres(a.fly_depth + b.fly_depth);
      const double tip = scatter * 0.5 * in_metres(a.tip_depth + b.tip_depth);
      const CastSample mean{
          a.t, {}, {}, 0.5 * (a.over_ground + b.over_ground), 0.5 * (a.through_water + b.through_water), {}};
      const double pace = share_of_pace(mean, fishing.method, fishing.easy, kJudgement.pace);
      const bool touches = h - std::max(fly, tip) <= kJudgement.snag.within_m;
      const double after = touches ? unsnagged * std::exp(-rate * dt) : unsnagged;
      const double fished = touches ? (unsnagged - after) / rate : unsnagged * dt;
      effective += share_at(zone, metres(h - fly), kJudgement.zone) * pace * fished;
      spent += fished;
      if (scatter == fishing.scatter.front()) ideal += pace * dt, out += dt;
      unsnagged = after;
    }
    spent += kJudgement.snag.cost_s * (1 - unsnagged);
    snagged += 1 - unsnagged;
  }
  const double members = static_cast<double>(fishing.scatter.size()), paid = in_seconds(fishing.paid);
  return {60 * effective / members / (paid + spent / members), 60 * ideal / (paid + out), snagged / members, {}};
}

// Lines that sink, lie on the bed for a while and are lifted, at changing pace; looked at as often, but at the end, or
// at any time.
CastPath some_path(std::mt19937& rng) {
  const auto between = [&](double least, double most) { return std::uniform_real_distribution(least, most)(rng); };
  CastPath path = steady_path(seconds(between(5, 40)), metres(1), metres(1), metres_per_second(0.3));
  const double deepest = between(0.1, 3.0), sinks = between(0.3, 3.0), tip = between(0.3, 1.3);
  const double end = static_cast<double>(path.samples.size() - 1);
  for (std::size_t i = 0; i < path.samples.size(); ++i) {
    CastSample& sample = path.samples[i];
    const double fly = deepest * std::min(1.0, sinks * static_cast<double>(i) / end) * between(0.9, 1.0);
    sample.fly_depth = metres(fly);
    sample.tip_depth = metres(tip * fly);
    sample.over_ground = sample.through_water = metres_per_second(between(0.1, 1.2));
  }
  path.samples.back().t = path.samples.back().t + seconds(between(0.0, 5.0));
  if (between(0.0, 1.0) < 0.5) return path;
  for (std::size_t i = 1; i < path.samples.size(); ++i)
    path.samples[i].t = path.samples[i - 1].t + seconds(between(0.01, 2.0));
  return path;
}

TEST(Seconds, OfManyMembersAtOnceAreThoseOfOneAfterTheOther) {
  std::mt19937 rng(1);
  int on_the_bed = 0, of_use = 0;
  for (int i = 0; i < 300; ++i) {
    const CastPath path = some_path(rng);
    const Fishing fishing = stripping({0.68, 0.86, 1.0, 1.16, 1.47});
    const CaseSeconds plain = plainly(fishing, path, zone_2_m()), found = of(fishing, path);
    EXPECT_NEAR(found.seconds, plain.seconds, kExact);
    EXPECT_NEAR(found.ideal, plain.ideal, kExact);
    EXPECT_NEAR(found.snag_per_cast, plain.snag_per_cast, kExact);
    on_the_bed += found.snag_per_cast > 0.0;
    of_use += found.seconds > 1.0;
  }
  EXPECT_GT(on_the_bed, 50);
  EXPECT_GT(of_use, 50);
}

// Nothing is left out that is better than what it is to beat; much of what is worse is.
TEST(Seconds, ThatAreNoMoreThanOthersMayBeLeftOut) {
  std::mt19937 rng(2);
  int left_out = 0;
  double beaten = 0.0;
  for (int i = 0; i < 300; ++i) {
    const CastPath path = some_path(rng);
    const Fishing fishing = stripping({0.68, 0.86, 1.0, 1.16, 1.47});
    const CaseSeconds all = of(fishing, path);
    const auto over = seconds_over(beaten, fishing, {&path, zone_2_m()}, kJudgement);
    if (over) {
      EXPECT_EQ(over->seconds, all.seconds);
      EXPECT_EQ(over->ideal, all.ideal);
    } else {
      EXPECT_LE(all.seconds, beaten);
      ++left_out;
    }
    beaten = std::max(beaten, all.seconds);
  }
  EXPECT_GT(left_out, 30);
}

TEST(Scatter, JoinsRigDepthAndSpeedInLogs) {
  Technique mended;
  mended.mending = Mending::OneMend;
  Lane lane;
  lane.sd_ln_depth = 0.15, lane.sd_ln_speed = 0.15;
  const double sd = std::sqrt(0.30 * 0.30 + 0.15 * 0.15 + 0.135 * 0.135);
  const std::vector<double> factors = scatter_factors(mended, lane, kJudgement.scatter);
  ASSERT_EQ(factors.size(), 5u);
  EXPECT_NEAR(factors[0], std::exp(-1.28 * sd), kExact);
  EXPECT_EQ(factors[2], 1.0);
  EXPECT_NEAR(factors[3], std::exp(0.52 * sd), kExact);
}

TEST(Scatter, IsWiderForACountedStrip) {
  Technique strip;
  strip.method = Method::Strip;
  EXPECT_EQ(rig_scatter(strip, kJudgement.scatter), 0.25);
  strip.count = seconds(3);
  EXPECT_EQ(rig_scatter(strip, kJudgement.scatter), 0.30);
}

PerCase<Length> same(double m) { return {metres(m), metres(m), metres(m)}; }

TEST(FlyDepth, OfATightSwingIsAQuarterUnderAndThreeTenthsOver) {
  const Band<Length> band = fly_depth_band({same(1.0), same(5.0), {}}, {}, kJudgement);
  EXPECT_NEAR(in_metres(band.low), 0.75, kExact);
  EXPECT_NEAR(in_metres(band.best), 1.0, kExact);
  EXPECT_NEAR(in_metres(band.high), 1.30, kExact);
}

// Halves in logs add as squares: sqrt(ln(1.25)^2 + ln(4/3)^2) under, ln(1.3) over.
TEST(FlyDepth, JoinsTheFlowCasesInLogs) {
  const PerCase<Length> fly{metres(1.0), metres(1.0), metres(0.8)};
  const Band<Length> band = fly_depth_band({fly, same(5.0), {}}, {}, kJudgement);
  EXPECT_NEAR(in_metres(band.low), std::exp(-std::hypot(std::log(1.25), std::log(4.0 / 3.0))), kExact);
  EXPECT_NEAR(in_metres(band.high), 1.30, kExact);
}

TEST(FlyDepth, IsNeverKnownBetterThanTenCentimetresNorPastTheBed) {
  const Band<Length> band = fly_depth_band({same(0.2), same(0.25), {}}, {}, kJudgement);
  EXPECT_NEAR(in_metres(band.low), 0.1, kExact);
  EXPECT_NEAR(in_metres(band.high), 0.25, kExact);
}

TEST(FlyDepth, OfADryFlyIsTheSurface) {
  Technique dry;
  dry.method = Method::Dry;
  EXPECT_EQ(in_metres(fly_depth_band({same(0), same(2), {}}, dry, kJudgement).high), 0.0);
}

TEST(FlyDepth, UnderAnIndicatorIsAtMostTheLeader) {
  Technique drift;
  drift.method = Method::Indicator;
  EXPECT_NEAR(in_metres(fly_depth_band({same(1.8), same(3), metres(1.85)}, drift, kJudgement).high), 1.85, kExact);
}

}  // namespace
}  // namespace floatwright
