#include "engine/learning/belief.hpp"

#include <algorithm>
#include <cmath>
#include <numbers>
#include <tuple>

namespace floatwright {
namespace {

constexpr int kSteps = 400;       // of a trapezoid rule over a smooth density: to round-off
constexpr double kFarOut = 9.0;   // sd of the normal part; the posterior falls off faster than it
constexpr double kTail = -30.0;   // of a normal; below it its logarithm by the asymptotic series
constexpr int kHalvings = 80;     // of an interval, to round-off

double log_density(double z) { return -0.5 * z * z - 0.5 * std::log(2.0 * std::numbers::pi); }
double log_below(double z) {  // ln Phi(z)
  if (z > kTail) return std::log(0.5 * std::erfc(-z / std::numbers::sqrt2));
  return log_density(z) - std::log(-z) + std::log1p(-1.0 / (z * z));
}

// In sd of the bound, towards the side on which x was seen to lie.
double inside(const SeenBound& bound, double x) { return (bound.below ? bound.at - x : x - bound.at) / bound.sd; }

// The normal observations and the prior as one normal.
Belief normal_part(double prior_sd, const std::vector<SeenValue>& values) {
  double information = 1.0 / (prior_sd * prior_sd), pull = 0.0;
  for (const SeenValue& value : values) {
    information += 1.0 / (value.sd * value.sd);
    pull += value.x / (value.sd * value.sd);
  }
  return {pull / information, 1.0 / std::sqrt(information)};
}

double log_posterior(const Belief& normal, const std::vector<SeenBound>& bounds, double x) {
  const double z = (x - normal.mean) / normal.sd;
  double sum = -0.5 * z * z;
  for (const SeenBound& bound : bounds) sum += log_below(inside(bound, x));
  return sum;
}

double slope(const Belief& normal, const std::vector<SeenBound>& bounds, double x) {
  double sum = (normal.mean - x) / (normal.sd * normal.sd);
  for (const SeenBound& bound : bounds) {
    const double z = inside(bound, x);
    sum += (bound.below ? -1.0 : 1.0) / bound.sd * std::exp(log_density(z) - log_below(z));
  }
  return sum;
}

// The density is log-concave: its slope falls, and beyond all bounds and the normal's mean has one sign.
double mode(const Belief& normal, const std::vector<SeenBound>& bounds) {
  double low = normal.mean, high = normal.mean;
  for (double step = normal.sd; slope(normal, bounds, low) < 0.0; step *= 2.0) low -= step;
  for (double step = normal.sd; slope(normal, bounds, high) > 0.0; step *= 2.0) high += step;
  for (int i = 0; i < kHalvings; ++i) {
    const double middle = 0.5 * (low + high);
    (slope(normal, bounds, middle) > 0.0 ? low : high) = middle;
  }
  return 0.5 * (low + high);
}

double posterior_mean(const Belief& normal, const std::vector<SeenBound>& bounds) {
  const double peak = mode(normal, bounds), top = log_posterior(normal, bounds, peak);
  const double step = 2.0 * kFarOut * normal.sd / kSteps;
  double weights = 0.0, moment = 0.0;
  for (int i = 0; i <= kSteps; ++i) {
    const double x = (i - kSteps / 2) * step;  // from the peak
    const double weight = std::exp(log_posterior(normal, bounds, peak + x) - top);
    weights += weight;
    moment += weight * x;
  }
  return peak + moment / weights;
}

// What touching or not tells of x, in the mean over the prior: phi^2/(Phi (1 - Phi))/sd^2.
double information_of(const SeenBound& bound, double prior_sd) {
  double weights = 0.0, sum = 0.0;
  for (int i = 0; i <= kSteps; ++i) {
    const double z = kFarOut * (2.0 * i / kSteps - 1.0);
    const double weight = std::exp(log_density(z)), from_bound = inside(bound, z * prior_sd);
    sum += weight * std::exp(2.0 * log_density(from_bound) - log_below(from_bound) - log_below(-from_bound));
    weights += weight;
  }
  return sum / weights / (bound.sd * bound.sd);
}

}  // namespace

Belief belief(double prior_sd, const std::vector<SeenValue>& values, const std::vector<SeenBound>& bounds) {
  const Belief normal = normal_part(prior_sd, values);
  if (bounds.empty()) return normal;
  std::vector<SeenBound> in_order = bounds;  // sums to the last bit the same, in whatever order they were met
  std::ranges::sort(in_order, {}, [](const SeenBound& b) { return std::tuple(b.at, b.sd, b.below); });
  double information = 1.0 / (normal.sd * normal.sd);
  for (const SeenBound& bound : in_order) information += information_of(bound, prior_sd);
  return {posterior_mean(normal, in_order), 1.0 / std::sqrt(information)};
}

}  // namespace floatwright
