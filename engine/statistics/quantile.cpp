#include "engine/statistics/quantile.hpp"

#include <algorithm>
#include <cassert>
#include <cmath>
#include <cstddef>
#include <utility>

namespace floatwright {
namespace {

struct Place {
  std::size_t below = 0;  // index of the order statistic at or below
  double beyond = 0.0;    // share of the way to the next
};

Place place_of(std::size_t n, double p) {
  assert(n > 0);
  const double place = static_cast<double>(n - 1) * std::clamp(p, 0.0, 1.0);
  return {static_cast<std::size_t>(place), place - std::floor(place)};
}

}  // namespace

double quantile(std::vector<double> values, double p) {
  const Place place = place_of(values.size(), p);
  const auto at = values.begin() + static_cast<std::ptrdiff_t>(place.below);
  std::nth_element(values.begin(), at, values.end());
  if (place.beyond == 0.0) return *at;
  return *at + place.beyond * (*std::min_element(at + 1, values.end()) - *at);
}

double quantile_of_sorted(std::span<const double> ascending, double p) {
  const Place place = place_of(ascending.size(), p);
  const double low = ascending[place.below];
  return place.beyond == 0.0 ? low : low + place.beyond * (ascending[place.below + 1] - low);
}

double quantile_of_next(std::vector<double> values, double p) {
  const auto n = static_cast<double>(values.size());
  return values.size() < 2 ? values.front() : quantile(std::move(values), ((n + 1.0) * p - 1.0) / (n - 1.0));
}

double median(std::vector<double> values) { return quantile(std::move(values), 0.5); }

}  // namespace floatwright
