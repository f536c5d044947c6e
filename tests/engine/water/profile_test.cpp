#include "engine/water/profile.hpp"

#include <gtest/gtest.h>

namespace floatwright {
namespace {

const Profile kPower{};
const Profile kLog{Profile::Law::Log, 0.0, metres(0.05)};
const Profile kUniform{Profile::Law::Uniform, 0.0, {}};

// Midpoint rule over the height, the profile's own shares: an independent road to the mean.
double summed_mean(const Profile& profile, Length depth) {
  constexpr int kSteps = 20000;
  double sum = 0.0;
  for (int i = 0; i < kSteps; ++i) sum += share_of_surface(profile, depth, (i + 0.5) / kSteps) / kSteps;
  return sum;
}

TEST(Profile, IsTheSameAtEveryHeightWhenUniform) {
  EXPECT_EQ(share_of_surface(kUniform, metres(1.0), 0.0), 1.0);
  EXPECT_EQ(mean_over_surface(kUniform, metres(1.0)), 1.0);
}

TEST(Profile, IsOneAtTheSurfaceAndAbove) {
  EXPECT_DOUBLE_EQ(share_of_surface(kPower, metres(1.0), 1.0), 1.0);
  EXPECT_DOUBLE_EQ(share_of_surface(kLog, metres(1.0), 1.3), 1.0);
}

TEST(Profile, StandsStillBelowTwoPercentOfTheDepth) {
  EXPECT_EQ(share_of_surface(kPower, metres(1.5), 0.0), share_of_surface(kPower, metres(1.5), 0.02));
  EXPECT_GT(share_of_surface(kPower, metres(1.5), 0.0), 0.0);
}

TEST(Profile, AddsUpToItsMean) {
  // The frozen layer lifts the sum by less than 0.005 of the surface speed.
  EXPECT_NEAR(summed_mean(kPower, metres(1.5)), mean_over_surface(kPower, metres(1.5)), 0.005);
  EXPECT_NEAR(summed_mean(kLog, metres(1.5)), mean_over_surface(kLog, metres(1.5)), 0.005);
}

TEST(Profile, GivesBackTheSurfaceSpeedItTookTheMeanOf) {
  const SurfaceSpeed seen = surface_metres_per_second(1.1);
  EXPECT_NEAR(surface_speed(mean_speed(seen, kLog, metres(1.2)), kLog, metres(1.2)).si(), 1.1, 1e-12);
}

TEST(Profile, SlowsTheBedMoreOverRougherGround) {
  const Profile boulders{Profile::Law::Log, 0.0, metres(0.4)};
  EXPECT_LT(share_of_surface(boulders, metres(1.0), 0.1), share_of_surface(kLog, metres(1.0), 0.1));
  EXPECT_LT(mean_over_surface(boulders, metres(1.0)), mean_over_surface(kLog, metres(1.0)));
}

TEST(Profile, NeverRunsBackwardsOverBouldersLargerThanTheDepth) {
  const Profile boulders{Profile::Law::Log, 0.0, metres(3.0)};
  EXPECT_GE(share_of_surface(boulders, metres(0.5), 0.0), 0.0);
  EXPECT_GT(mean_over_surface(boulders, metres(0.5)), 0.5);
}

}  // namespace
}  // namespace floatwright
