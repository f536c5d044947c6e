// Worked examples of the scores of forecasts: the efficiency's printed inputs from the vignette of the public package
// hydroGOF; the others worked out by their published formulas (named at each).
#include <gtest/gtest.h>

#include <numeric>

#include "engine/statistics/flow_duration.hpp"
#include "engine/statistics/quantile.hpp"
#include "engine/statistics/scores.hpp"

namespace floatwright {
namespace {

const std::vector<double> kTenFlows{12.0, 8.0, 30.0, 5.0, 7.0, 9.0, 22.0, 15.0, 6.0, 10.0};

TEST(PublishedScores, EfficiencyOfAForecastThatIsAlwaysOneHigh) {
  Judged pairs;  // hydroGOF vignette: observed 1..10, simulated 2..11
  for (int i = 1; i <= 10; ++i) {
    pairs.observed.push_back(i);
    pairs.forecast.push_back(i + 1);
  }
  EXPECT_NEAR(nash_sutcliffe(pairs).value(), 1.0 - 10.0 / 82.5, 1e-12);
}

// Nash & Sutcliffe 1970; Knoben, Freer & Woods, Hydrol. Earth Syst. Sci. 23, 2019 (from memory): the mean as a
// forecast.
TEST(PublishedScores, TheMeanAsAForecastScoresNothingAndOneLessRootTwo) {
  const Judged pairs{{2.0, 2.0, 2.0}, {1.0, 2.0, 3.0}};
  EXPECT_DOUBLE_EQ(nash_sutcliffe(pairs).value(), 0.0);
  EXPECT_NEAR(kling_gupta_2009(pairs)->efficiency(), -0.41421356, 1e-8);
}

TEST(PublishedScores, WhereNothingVariedThereIsNoScoreButAReason) {
  const Judged frozen{{1.0, 2.0}, {5.0, 5.0}};
  EXPECT_FALSE(nash_sutcliffe(frozen).has_value());
  EXPECT_FALSE(kling_gupta_2009(frozen).has_value());
  EXPECT_FALSE(persistence_skill(frozen, frozen.observed).has_value());
  EXPECT_FALSE(nash_sutcliffe({}).why_absent().empty());
}

// The persistence index, form of Kitanidis & Bras 1980: squares 230 against 1525.
TEST(PublishedScores, SkillOverHoldingTheLastValue) {
  const Judged pairs{{110.0, 140.0, 145.0, 128.0, 126.0}, {120.0, 150.0, 140.0, 130.0, 125.0}};
  const std::vector<double> held{100.0, 120.0, 150.0, 140.0, 130.0};
  EXPECT_NEAR(persistence_skill(pairs, held).value(), 0.8491803279, 1e-10);
}

// Gneiting & Raftery 2007: mean |x - y| less half the mean |x - x'|.
TEST(PublishedScores, RankedProbabilityScoreOfAnEnsemble) {
  EXPECT_NEAR(crps({90.0, 100.0, 110.0, 120.0, 130.0}, 105.0), 5.0, 1e-12);
  EXPECT_NEAR(crps({130.0, 90.0, 120.0, 110.0, 100.0}, 105.0), 5.0, 1e-12);
  EXPECT_NEAR(crps({2.0, 4.0}, 3.0), 0.5, 1e-12);
  EXPECT_NEAR(crps({1.0, 2.0, 3.0}, 0.0), 1.5555555556, 1e-10);
  EXPECT_NEAR(crps({0.0, 1.0, 2.0, 3.0, 4.0}, 2.0), 0.4, 1e-12);
  EXPECT_DOUBLE_EQ(crps({7.0}, 4.5), 2.5);
}

TEST(PublishedScores, BrierIsTheMeanSquareOfChanceLessOutcome) {  // Brier 1950
  EXPECT_NEAR(brier(std::vector<double>{0.9, 0.2, 0.5}, {true, false, true}), (0.01 + 0.04 + 0.25) / 3.0, 1e-12);
}

TEST(PublishedScores, CoverageCountsTheEndsOfABand) {
  const std::vector<double> low{1.0, 1.0, 1.0, 1.0}, high{2.0, 2.0, 2.0, 2.0}, observed{1.0, 2.0, 2.1, 1.5};
  EXPECT_DOUBLE_EQ(coverage(low, high, observed), 0.75);
}

// Weibull's plotting position m/(n+1).
TEST(PublishedScores, FlowDurationOfTenFlows) {
  const DurationCurve curve = duration_curve(kTenFlows);
  EXPECT_DOUBLE_EQ(curve.values.front(), 30.0);
  EXPECT_NEAR(curve.shares.front(), 0.09091, 1e-5);
  EXPECT_NEAR(curve.shares[4], 0.45455, 1e-5);
  EXPECT_NEAR(curve.shares.back(), 0.90909, 1e-5);
  EXPECT_NEAR(exceeded_for(curve, 0.10).value(), 29.2, 1e-9);
  EXPECT_NEAR(exceeded_for(curve, 0.25).value(), 16.75, 1e-9);
  EXPECT_NEAR(exceeded_for(curve, 0.50).value(), 9.5, 1e-9);
  EXPECT_NEAR(exceeded_for(curve, 0.75).value(), 6.75, 1e-9);
  EXPECT_NEAR(exceeded_for(curve, 0.90).value(), 5.1, 1e-9);
  EXPECT_FALSE(exceeded_for(curve, 0.05).has_value());
  EXPECT_FALSE(exceeded_for(curve, 0.95).has_value());
}

// Python's statistics.quantiles(method="inclusive") of the same ten.
TEST(PublishedScores, QuantilesOfTenFlows) {
  EXPECT_NEAR(quantile(kTenFlows, 0.1), 5.9, 1e-12);
  EXPECT_NEAR(quantile(kTenFlows, 0.25), 7.25, 1e-12);
  EXPECT_NEAR(median(kTenFlows), 9.5, 1e-12);
  EXPECT_NEAR(quantile(kTenFlows, 0.75), 14.25, 1e-12);
  EXPECT_NEAR(quantile(kTenFlows, 0.9), 22.8, 1e-12);
  EXPECT_DOUBLE_EQ(quantile(kTenFlows, 1.0), 30.0);
  EXPECT_DOUBLE_EQ(quantile({3.0}, 0.9), 3.0);
  // method="exclusive"; the ends are those of Weibull's plotting position above.
  EXPECT_NEAR(quantile_of_next(kTenFlows, 0.1), 5.1, 1e-12);
  EXPECT_NEAR(quantile_of_next(kTenFlows, 0.8), 20.6, 1e-12);
  EXPECT_NEAR(quantile_of_next(kTenFlows, 0.9), 29.2, 1e-12);
  EXPECT_DOUBLE_EQ(quantile_of_next({3.0}, 0.9), 3.0);
  std::vector<double> ten(10);
  std::iota(ten.begin(), ten.end(), 1.0);
  EXPECT_DOUBLE_EQ(quantile_of_sorted(ten, 0.5), 5.5);
}

}  // namespace
}  // namespace floatwright
