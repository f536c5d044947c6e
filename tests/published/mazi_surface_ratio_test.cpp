// Mazi and others, on the ratio of mean to surface velocity in rough-bed streams (abstract): a log law with
// y0 = c k, k about D84, c = 8.61 (h/k)^-1.821 and at least 1/30, fitted to streams over gravel and rocks at
// 5 <= h/D84 < 30 and holding them within some 10 %; a fixed 0.86 held them worse.
#include <gtest/gtest.h>

#include <algorithm>
#include <cmath>

#include "engine/water/bed_profile.hpp"

namespace floatwright {
namespace {

constexpr Length kCobbles = metres(0.15);  // D84 as bed_profile.hpp has it

double fitted_ratio(double depths_of_stone) {
  const double c = std::max(1.0 / 30.0, 8.61 * std::pow(depths_of_stone, -1.821));
  const double y0 = c / depths_of_stone;  // of the depth
  return (std::log(1.0 / y0) - 1.0 + y0) / std::log(1.0 / y0);
}

double ours(double depths_of_stone) {
  const Length depth = depths_of_stone * kCobbles;
  return mean_over_surface(bed_profile(Bed::Cobble, depth), depth);
}

TEST(MaziSurfaceRatio, IsMetWithinItsErrorFromSevenStonesOfDepthUp) {
  for (const double depths : {7.0, 8.0, 10.0, 13.0, 17.0, 21.0, 25.0, 30.0})
    EXPECT_NEAR(ours(depths) / fitted_ratio(depths), 1.0, 0.10) << depths;
}

// At five stones of depth the fit is 16 % lower still: a roughness of 3.5 stones errs there toward the usual curve.
TEST(MaziSurfaceRatio, IsMetBetterThanByOneRatioForAllInShallowWater) {
  for (const double depths : {5.0, 6.0, 7.0, 8.0, 10.0, 12.0})
    EXPECT_LT(std::abs(ours(depths) - fitted_ratio(depths)), std::abs(0.86 - fitted_ratio(depths))) << depths;
  EXPECT_NEAR(ours(5.0) / fitted_ratio(5.0), 1.0, 0.19);
}

}  // namespace
}  // namespace floatwright
