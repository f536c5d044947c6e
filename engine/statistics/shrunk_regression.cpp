#include "engine/statistics/shrunk_regression.hpp"

#include <Eigen/Cholesky>
#include <algorithm>
#include <cmath>
#include <numeric>

namespace floatwright {
namespace {

// X'WX (its lower half) and X'Wt, with w over the size of each row's residual. Plain loops: the rows are many and
// narrow.
struct NormalEquations {
  Eigen::MatrixXd left;
  Eigen::VectorXd right;

  NormalEquations(const RegressionRows& rows, std::span<const double> b, double least_residual)
      : left(Eigen::MatrixXd::Zero(static_cast<Eigen::Index>(b.size()), static_cast<Eigen::Index>(b.size()))),
        right(Eigen::VectorXd::Zero(static_cast<Eigen::Index>(b.size()))) {
    const std::size_t p = b.size();
    double* const xwx = left.data();  // column after column
    double* const xwt = right.data();
    for (std::size_t i = 0; i < rows.size(); ++i) {
      const double* const x = rows.regressors.data() + i * p;
      double miss = rows.outcomes[i];
      for (std::size_t c = 0; c < p; ++c) miss -= b[c] * x[c];
      const double w = (rows.weights.empty() ? 1.0 : rows.weights[i]) / std::max(std::abs(miss), least_residual);
      for (std::size_t c = 0; c < p; ++c) {
        const double wx = w * x[c];
        if (wx == 0.0) continue;  // the other limb's regressors
        for (std::size_t r = c; r < p; ++r) xwx[c * p + r] += wx * x[r];
        xwt[c] += wx * rows.outcomes[i];
      }
    }
  }
};

}  // namespace

std::vector<double> shrunk_least_absolute(const RegressionRows& rows, std::span<const double> prior,
                                          Shrinking shrinking) {
  std::vector<double> b(prior.begin(), prior.end());
  if (rows.size() == 0 || b.empty()) return b;
  const Eigen::Map<const Eigen::VectorXd> b0(prior.data(), static_cast<Eigen::Index>(prior.size()));
  for (int pass = 0; pass < shrinking.passes; ++pass) {
    NormalEquations normal(rows, b, shrinking.least_residual);
    Eigen::VectorXd pull = normal.left.diagonal() * (shrinking.prior_rows / static_cast<double>(rows.size()));
    pull = (pull.array() > 0.0).select(pull, 1.0);
    normal.left.diagonal() += pull;
    const Eigen::VectorXd solved = normal.left.ldlt().solve(normal.right + pull.cwiseProduct(b0));
    b.assign(solved.begin(), solved.end());
  }
  return b;
}

double dot(std::span<const double> coefficients, std::span<const double> regressors) {
  return std::inner_product(coefficients.begin(), coefficients.end(), regressors.begin(), 0.0);
}

}  // namespace floatwright
