#include "adapters/out/figure/axis.hpp"

#include <cmath>

namespace floatwright {

double round_step(double span, int count) {
  const double least = span / count;
  const double ten = std::pow(10.0, std::floor(std::log10(least)));
  for (const double times : {1.0, 2.0, 5.0})
    if (times * ten >= least * (1.0 - 1e-9)) return times * ten;
  return 10.0 * ten;
}

std::vector<double> multiples(double step, double least, double most) {
  std::vector<double> values;
  for (double i = std::ceil(least / step - 1e-9); i * step <= most + 1e-9 * step; ++i) values.push_back(i * step);
  return values;
}

}  // namespace floatwright
