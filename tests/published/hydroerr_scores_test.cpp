// The scores that the tests of the public hydrology package HydroErr print for six pairs, and those of its
// documentation's second set (RMSE and NSE; ME, MAE, r and KGE worked out by their formulas). KGE 2012 of the first set
// likewise.
#include <gtest/gtest.h>

#include <cmath>
#include <limits>

#include "engine/statistics/scores.hpp"

namespace floatwright {
namespace {

const std::vector<double> kSimulated{5.0, 7.0, 9.0, 2.0, 4.5, 6.7};
const std::vector<double> kObserved{4.7, 6.0, 10.0, 2.5, 4.0, 6.8};

void expect_printed(const Judged& pairs) {
  EXPECT_NEAR(mean_error(pairs), 0.0333333333, 1e-10);
  EXPECT_NEAR(mean_absolute_error(pairs), 0.5666666667, 1e-10);
  EXPECT_NEAR(root_mean_square_error(pairs), 0.6582805886, 1e-10);
  EXPECT_NEAR(nash_sutcliffe(pairs).value(), 0.923333988598388, 1e-12);
  const KlingGupta of_2009 = kling_gupta_2009(pairs).value();
  EXPECT_NEAR(of_2009.correlation, 0.9615951377405804, 1e-12);
  EXPECT_NEAR(of_2009.variability, 0.927910707932087, 1e-12);
  EXPECT_NEAR(of_2009.bias, 1.0058823529411764, 1e-12);
  EXPECT_NEAR(of_2009.efficiency(), 0.9181073779138655, 1e-12);
  const KlingGupta of_2012 = kling_gupta_2012(pairs).value();
  EXPECT_NEAR(of_2012.variability, 0.9224843295, 1e-10);
  EXPECT_NEAR(of_2012.efficiency(), 0.9132923608280755, 1e-12);
}

TEST(PublishedHydroErr, SixPairsScoreAsPrinted) { expect_printed({kSimulated, kObserved}); }

TEST(PublishedHydroErr, BadPairsLeaveTheScoresUnchanged) {
  constexpr double kNan = std::numeric_limits<double>::quiet_NaN(), kInf = std::numeric_limits<double>::infinity();
  std::vector<double> simulated{kNan, 5.0, kInf, -0.1, 0.0, 3.0, 3.0, 3.0, 3.0},
      observed{3.0, kNan, 3.0, 3.0, 3.0, kInf, -kInf, -2.0, 0.0};
  simulated.insert(simulated.begin() + 4, kSimulated.begin(), kSimulated.end());
  observed.insert(observed.begin() + 4, kObserved.begin(), kObserved.end());
  expect_printed(usable_pairs(simulated, observed, Keep::AboveZero));
}

TEST(PublishedHydroErr, TheDocumentationsSecondSet) {
  Judged pairs{kSimulated, kObserved};
  pairs.observed.back() = 7.0;
  EXPECT_NEAR(mean_error(pairs), 0.0, 1e-12);
  EXPECT_NEAR(mean_absolute_error(pairs), 0.6, 1e-12);
  EXPECT_NEAR(root_mean_square_error(pairs), 0.668331255192114, 1e-12);
  EXPECT_NEAR(nash_sutcliffe(pairs).value(), 0.922093023255814, 1e-12);
  EXPECT_NEAR(kling_gupta_2009(pairs)->correlation, 0.96107936, 1e-8);
  EXPECT_NEAR(kling_gupta_2009(pairs)->efficiency(), 0.912223072345668, 1e-12);
}

TEST(PublishedHydroErr, ZerosAreKeptWhereOnlyFinitePairsAreAsked) {
  const std::vector<double> forecast{0.0, 1.0}, observed{2.0, std::nan("")};
  EXPECT_EQ(usable_pairs(forecast, observed, Keep::Finite).observed, std::vector<double>{2.0});
}

}  // namespace
}  // namespace floatwright
