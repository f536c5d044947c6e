// Rantz and others 1982, Measurement and computation of streamflow, USGS Water-Supply Paper 2175, table 2: the standard
// vertical-velocity curve, and the surface coefficient of 0.84 to 0.90. From memory (high confidence); the table closes
// to 1 %, which is the tolerance wherever the curve itself is held against a formula.
#include <gtest/gtest.h>

#include <array>

#include "engine/water/profile.hpp"

namespace floatwright {
namespace {

struct Row {
  double depth_share;  // of the depth, from the surface down
  double point_over_mean;
};
constexpr std::array kCurve{Row{0.05, 1.160}, Row{0.1, 1.160}, Row{0.2, 1.149}, Row{0.3, 1.130},
                            Row{0.4, 1.108},  Row{0.5, 1.067}, Row{0.6, 1.020}, Row{0.7, 0.953},
                            Row{0.8, 0.871},  Row{0.9, 0.746}, Row{0.95, 0.648}};
const Length kDepth = metres(1.5);

double point_over_mean(const Profile& profile, double depth_share) {
  return share_of_surface(profile, kDepth, 1.0 - depth_share) / mean_over_surface(profile, kDepth);
}

TEST(Rantz1982, TheTableClosesToOnePercent) {
  double sum = 0.05 * kCurve.front().point_over_mean + 0.05 * 0.75 * kCurve.back().point_over_mean;
  for (std::size_t i = 1; i < kCurve.size(); ++i) {
    sum += 0.5 * (kCurve[i - 1].point_over_mean + kCurve[i].point_over_mean) *
           (kCurve[i].depth_share - kCurve[i - 1].depth_share);
  }
  EXPECT_NEAR(sum, 1.0, 0.01);
}

TEST(Rantz1982, SixthPowerLawFollowsTheCurveFromTheSurfaceToNineTenths) {
  // The curve bends more: the power law is within 4 % of it down to 0.8 of the depth, 7 % at 0.9.
  for (const auto& row : kCurve) {
    if (row.depth_share > 0.9) continue;
    EXPECT_NEAR(point_over_mean(Profile{}, row.depth_share) / row.point_over_mean, 1.0,
                row.depth_share > 0.8 ? 0.07 : 0.04)
        << row.depth_share;
  }
}

TEST(Rantz1982, SurfaceSpeedTimesEightyFiveHundredthsIsTheMean) {
  // 0.84 to 0.90, higher over smooth beds; 0.85 is usual.
  EXPECT_NEAR(mean_over_surface(Profile{}, kDepth), 0.85, 0.02);
  const Profile cobbles{Profile::Law::Log, 0.0, metres(0.075)};  // a twentieth of the depth
  EXPECT_GT(mean_over_surface(cobbles, kDepth), 0.84);
  EXPECT_LT(mean_over_surface(cobbles, kDepth), 0.90);
}

TEST(Rantz1982, TwoPointAndSixTenthsMethodsFindTheMean) {
  const auto at = [](double depth_share) { return point_over_mean(Profile{}, depth_share); };
  EXPECT_NEAR(0.5 * (at(0.2) + at(0.8)), 1.010, 0.01);
  EXPECT_NEAR(at(0.6), 1.020, 0.02);
}

}  // namespace
}  // namespace floatwright
