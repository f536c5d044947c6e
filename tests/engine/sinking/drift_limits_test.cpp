// How long a cast lasts: worked out on paper from the limits shipped, and from another guide's.
#include "engine/sinking/drift_limits.hpp"

#include <gtest/gtest.h>

#include "engine/sinking/cast_path.hpp"
#include "tests/engine/tackle/rack.hpp"

namespace floatwright {
namespace {

constexpr double kExact = 1e-9;
const DriftLimits kShipped;

TEST(Mends, AreThreeTwoOneNone) {
  EXPECT_EQ(mends(LineKind::Floating, Method::Indicator, kShipped), 3);
  EXPECT_EQ(mends(LineKind::FloatingWithSinkingLeader, Method::Swing, kShipped), 2);
  EXPECT_EQ(mends(LineKind::ClearTip, Method::Swing, kShipped), 1);
  EXPECT_EQ(mends(LineKind::FullSinking, Method::Swing, kShipped), 0);
}

// Common practice, no source: the thin running line behind a head lifts nothing when it is flipped over.
TEST(Mends, OfAShootingHeadAreFewerThanOfAFullFloatingLine) {
  EXPECT_EQ(mends(LineKind::ShootingHead, Method::Swing, kShipped), 1);
  EXPECT_EQ(mends(LineKind::ShootingHead, Method::Dry, kShipped), 1);
  EXPECT_EQ(mends(LineKind::DoubleTaper, Method::Dry, kShipped), 2);
}

TEST(DragFreeTime, IsAllSlackOverTheSpeedAtWhichLineAndFlyPart) {
  const auto free = [](double count, Platform platform) {
    return in_seconds(drag_free_time(count, platform, surface_metres_per_second(0.9), kShipped));
  };
  EXPECT_NEAR(free(2, Platform::Anchored), 20.0, kExact);              // 4.5 m/(0.25 x 0.9 m/s)
  EXPECT_NEAR(free(2, Platform::Drifting), 50.0, kExact);              // 4.5 m/(0.10 x 0.9 m/s)
  EXPECT_NEAR(free(2, Platform::Held), 4.5 / (0.1525 * 0.9), kExact);  // 0.25 x 0.35 + 0.10 x 0.65
}

// A floating nymph taper or double taper cast 10 m, in 1 m of water all at one speed.
double lasts(Method method, Platform platform, double speed, const DriftLimits& limits = kShipped) {
  Profile uniform;
  uniform.law = Profile::Law::Uniform;
  const auto water = tabled_water(metres(1.0), surface_metres_per_second(speed), uniform, celsius(10.0));
  Technique technique;
  technique.method = method;
  technique.platform = platform;
  const bool dry = method == Method::Dry, swing = method == Method::Swing;
  const Rig rig{
      dry ? rack::kDoubleTaper : rack::kNymphTaper, {}, dry ? rack::kDry : (swing ? rack::kPlain : rack::kNymph), {}};
  const auto paths =
      cast_paths(rack::tackle(), rig, {&technique, 1}, {*water, Speed{}, metres(10), feet(9), limits, {}});
  return in_seconds(paths.front()->samples.back().t);
}

// From anchor at 1 m/s: three mends of an indicator are (1 + 3) 1.5/0.25 = 24 s, but the drift past is 12 m: 12 s.
TEST(Drift, PastAnAnchoredBoatEndsWithTheCastOrTheSlack) {
  EXPECT_NEAR(lasts(Method::Indicator, Platform::Anchored, 1.0), 12, 0.01);  // the indicator at the water's own speed
  EXPECT_NEAR(lasts(Method::Dry, Platform::Anchored, 1.0), 12, kExact);
  EXPECT_NEAR(lasts(Method::Indicator, Platform::Anchored, 0.1), 60, kExact);
}

// Drifting: an indicator 40 s; a dry fly (1 + 2) 1.5/(0.10 x 2) = 22.5 s at 2 m/s, 30 s in slower water.
TEST(Drift, FromADriftingBoatGoesAlong) {
  EXPECT_NEAR(lasts(Method::Indicator, Platform::Drifting, 1.0), 40, kExact);
  EXPECT_NEAR(lasts(Method::Dry, Platform::Drifting, 2.0), 22.5, kExact);
  EXPECT_NEAR(lasts(Method::Dry, Platform::Drifting, 1.0), 30, kExact);
}

TEST(Drift, HasAnEndInStillWater) { EXPECT_NEAR(lasts(Method::Dry, Platform::Anchored, 0.0), 30, kExact); }

TEST(Drift, OfAnyCastIsAMinuteAtMost) { EXPECT_NEAR(lasts(Method::Swing, Platform::Anchored, 0.01), 60, kExact); }

TEST(Drift, LastsLongerWhereAGuideLetsIt) {
  DriftLimits patient;
  patient.longest_indicator = seconds(55);
  patient.longest_dry = seconds(42);
  patient.casts_of_drift = 1.5;
  EXPECT_NEAR(lasts(Method::Indicator, Platform::Drifting, 1.0, patient), 55, kExact);
  EXPECT_NEAR(lasts(Method::Dry, Platform::Drifting, 0.5, patient), 42, kExact);
  EXPECT_NEAR(lasts(Method::Dry, Platform::Anchored, 1.0, patient), 15, kExact);
}

TEST(Drift, OfASwingStaysBelowTheRodAsLongAsTheGuideDoes) {
  DriftLimits patient;
  patient.hang_down_stay = seconds(9);
  EXPECT_NEAR(lasts(Method::Swing, Platform::Anchored, 1.0, patient) - lasts(Method::Swing, Platform::Anchored, 1.0), 6,
              kExact);
}

}  // namespace
}  // namespace floatwright
