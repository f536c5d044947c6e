#pragma once
// Regression by least absolute error, shrunk towards coefficients that are known to be reasonable, so that a year of
// record is enough: b = (X'WX + n0 D)^-1 (X'Wt + n0 D b0), D = diag(X'WX)/n, W = w/max(|residual|, floor), repeated
// from b0. Least absolute error by reweighting: E. J. Schlossmacher, J. Am. Stat. Assoc. 68, 1973 (from memory).
#include <cstddef>
#include <span>
#include <vector>

namespace floatwright {

// n rows of p regressors each, row after row.
struct RegressionRows {
  std::size_t width = 0;           // p
  std::vector<double> regressors;  // n p
  std::vector<double> outcomes;    // n
  std::vector<double> weights;     // n; empty: all alike

  [[nodiscard]] std::size_t size() const { return outcomes.size(); }
};

struct Shrinking {
  double prior_rows = 120.0;     // n0: the weight of the prior, in rows
  double least_residual = 0.01;  // the floor, in the outcome's unit
  int passes = 25;
};

// `prior` has p coefficients and is the answer where there are no rows. A regressor that is zero in every row keeps its
// prior.
[[nodiscard]] std::vector<double> shrunk_least_absolute(const RegressionRows& rows, std::span<const double> prior,
                                                        Shrinking shrinking = {});

[[nodiscard]] double dot(std::span<const double> coefficients, std::span<const double> regressors);

}  // namespace floatwright
