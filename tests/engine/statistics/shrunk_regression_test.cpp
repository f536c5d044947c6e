#include "engine/statistics/shrunk_regression.hpp"

#include <gtest/gtest.h>

#include <cmath>

namespace floatwright {
namespace {

// t = 2 x1 - 3 x2 on a grid of points.
RegressionRows plane(std::size_t n) {
  RegressionRows rows{.width = 2, .regressors = {}, .outcomes = {}, .weights = {}};
  for (std::size_t i = 0; i < n; ++i) {
    const double x1 = std::sin(static_cast<double>(i)), x2 = std::cos(1.7 * static_cast<double>(i));
    rows.regressors.insert(rows.regressors.end(), {x1, x2});
    rows.outcomes.push_back(2.0 * x1 - 3.0 * x2);
  }
  return rows;
}

TEST(ShrunkRegression, FindsAPlaneThatTheRowsLieOn) {
  const std::vector<double> prior{0.0, 0.0};
  const auto b = shrunk_least_absolute(plane(500), prior, {.prior_rows = 1e-6});
  EXPECT_NEAR(b[0], 2.0, 1e-6);
  EXPECT_NEAR(b[1], -3.0, 1e-6);
}

TEST(ShrunkRegression, IsThePriorWithoutRowsAndNearItWithFew) {
  const std::vector<double> prior{0.5, 0.0};
  EXPECT_EQ(shrunk_least_absolute({.width = 2, .regressors = {}, .outcomes = {}, .weights = {}}, prior), prior);
  const auto few = shrunk_least_absolute(plane(4), prior);
  EXPECT_NEAR(few[0], 0.5, 0.2);
  EXPECT_NEAR(few[1], 0.0, 0.3);
}

TEST(ShrunkRegression, IsNotMovedByAFewWildRowsAsSquaresWouldBe) {
  RegressionRows rows = plane(500);
  for (std::size_t i = 0; i < 500; i += 25) rows.outcomes[i] += 40.0;
  const auto b = shrunk_least_absolute(rows, std::vector<double>{0.0, 0.0}, {.prior_rows = 1.0});
  EXPECT_NEAR(b[0], 2.0, 0.05);
  EXPECT_NEAR(b[1], -3.0, 0.05);
}

TEST(ShrunkRegression, KeepsThePriorOfARegressorThatNeverMoves) {
  RegressionRows rows = plane(100);
  for (std::size_t i = 0; i < 100; ++i) {
    rows.outcomes[i] += 3.0 * rows.regressors[2 * i + 1];
    rows.regressors[2 * i + 1] = 0.0;
  }
  const auto b = shrunk_least_absolute(rows, std::vector<double>{0.0, 0.7}, {.prior_rows = 1.0});
  EXPECT_NEAR(b[0], 2.0, 0.1);
  EXPECT_DOUBLE_EQ(b[1], 0.7);
}

}  // namespace
}  // namespace floatwright
