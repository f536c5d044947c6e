#include "engine/statistics/shrunk_regression.hpp"

#include <Eigen/Cholesky>
#include <algorithm>
#include <cmath>
#include <numeric>

namespace floatwright {
namespace {

using Matrix = Eigen::Matrix<double, Eigen::Dynamic, Eigen::Dynamic, Eigen::RowMajor>;

Eigen::VectorXd weights_of(const RegressionRows& rows) {
  const auto n = static_cast<Eigen::Index>(rows.size());
  if (rows.weights.empty()) return Eigen::VectorXd::Ones(n);
  return Eigen::Map<const Eigen::VectorXd>(rows.weights.data(), n);
}

}  // namespace

std::vector<double> shrunk_least_absolute(const RegressionRows& rows, std::span<const double> prior,
                                          Shrinking shrinking) {
  const auto n = static_cast<Eigen::Index>(rows.size()), p = static_cast<Eigen::Index>(prior.size());
  if (n == 0 || p == 0) return {prior.begin(), prior.end()};
  const Eigen::Map<const Matrix> x(rows.regressors.data(), n, p);
  const Eigen::Map<const Eigen::VectorXd> t(rows.outcomes.data(), n);
  const Eigen::Map<const Eigen::VectorXd> b0(prior.data(), p);
  const Eigen::VectorXd w = weights_of(rows);
  Eigen::VectorXd b = b0;
  for (int pass = 0; pass < shrinking.passes; ++pass) {
    const Eigen::VectorXd reweighted =
        w.array() / (t - x * b).array().abs().max(shrinking.least_residual);
    const Matrix xw = reweighted.asDiagonal() * x;
    Matrix left = x.transpose() * xw;
    Eigen::VectorXd pull = left.diagonal() * (shrinking.prior_rows / static_cast<double>(n));
    pull = (pull.array() > 0.0).select(pull, 1.0);
    left.diagonal() += pull;
    b = left.ldlt().solve(xw.transpose() * t + pull.cwiseProduct(b0));
  }
  return {b.begin(), b.end()};
}

double dot(std::span<const double> coefficients, std::span<const double> regressors) {
  return std::inner_product(coefficients.begin(), coefficients.end(), regressors.begin(), 0.0);
}

}  // namespace floatwright
