#include "engine/statistics/theil_sen.hpp"

#include <cmath>
#include <vector>

#include "engine/statistics/quantile.hpp"

namespace floatwright {

std::optional<TheilSenLine> theil_sen(std::span<const double> x, std::span<const double> y, double least_apart) {
  std::vector<double> slopes, left;
  for (std::size_t i = 0; i < x.size(); ++i) {
    for (std::size_t j = 0; j < i; ++j) {
      const double apart = x[i] - x[j];
      if (apart != 0.0 && std::abs(apart) >= least_apart) slopes.push_back((y[i] - y[j]) / apart);
    }
  }
  if (slopes.empty()) return std::nullopt;
  const double slope = median(std::move(slopes));
  for (std::size_t i = 0; i < x.size(); ++i) left.push_back(y[i] - slope * x[i]);
  return TheilSenLine{median(std::move(left)), slope};
}

}  // namespace floatwright
