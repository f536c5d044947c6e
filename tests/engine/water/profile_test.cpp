#include "engine/water/profile.hpp"

#include <gtest/gtest.h>

#include <array>

#include "engine/water/bed_profile.hpp"

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

constexpr std::array kSmoothToRough{Bed::Sand, Bed::Gravel, Bed::Cobble, Bed::Boulder};

TEST(BedProfile, AddsUpToItsMeanAndIsFastestAtTheSurface) {
  for (const Bed bed : kSmoothToRough) {
    for (const double h : {0.3, 0.8, 1.5, 3.0}) {  // m
      const Profile profile = bed_profile(bed, metres(h));
      EXPECT_NEAR(summed_mean(profile, metres(h)), mean_over_surface(profile, metres(h)), 0.006) << h;
      for (double z = 0.05; z < 1.0; z += 0.05)
        EXPECT_LT(share_of_surface(profile, metres(h), z - 0.03), share_of_surface(profile, metres(h), z)) << h;
    }
  }
}

TEST(BedProfile, SlowsTheBedMoreTheRougherItIs) {
  for (std::size_t i = 1; i < kSmoothToRough.size(); ++i) {
    const Profile smoother = bed_profile(kSmoothToRough[i - 1], metres(1.0));
    const Profile rougher = bed_profile(kSmoothToRough[i], metres(1.0));
    EXPECT_LT(share_of_surface(rougher, metres(1.0), 0.1), share_of_surface(smoother, metres(1.0), 0.1));
    EXPECT_LT(mean_over_surface(rougher, metres(1.0)), mean_over_surface(smoother, metres(1.0)));
  }
}

TEST(BedProfile, MattersLessTheDeeperTheWater) {
  for (const Bed bed : kSmoothToRough)
    EXPECT_GT(bed_profile(bed, metres(1.3)).exponent, bed_profile(bed, metres(2.6)).exponent);
}

// 1 - 1/ln 60 where the water is two roughnesses deep, 1 - 1/ln 30 where it is shallower than one.
TEST(BedProfile, HasTheMeanOfTheLogLaw) {
  const Length depth = metres(2.0 * 3.5 * 0.15);
  EXPECT_NEAR(mean_over_surface(bed_profile(Bed::Cobble, depth), depth), 0.755760, 1e-6);
  EXPECT_NEAR(mean_over_surface(bed_profile(Bed::Boulder, metres(0.4)), metres(0.4)), 0.705986, 1e-6);
}

TEST(BedProfile, IsTheUsualOneWhereNothingIsKnownOfTheBed) {
  EXPECT_EQ(bed_profile(Bed::Unknown, metres(1.0)), Profile{});
  EXPECT_EQ(bed_profile(Bed::Wood, metres(1.0)), Profile{});
  EXPECT_EQ(bed_profile(Bed::Cobble, Length{}), Profile{});
}

}  // namespace
}  // namespace floatwright
