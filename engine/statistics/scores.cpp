#include "engine/statistics/scores.hpp"

#include <algorithm>
#include <cassert>
#include <cmath>
#include <cstddef>
#include <numeric>

namespace floatwright {
namespace {

double mean(std::span<const double> values) {
  assert(!values.empty());
  return std::accumulate(values.begin(), values.end(), 0.0) / static_cast<double>(values.size());
}

// Mean over the pairs of what `term` makes of forecast and observed.
template <class Term>
double mean_of(const Judged& pairs, Term term) {
  assert(pairs.size() > 0);
  double sum = 0.0;
  for (std::size_t i = 0; i < pairs.size(); ++i) sum += term(pairs.forecast[i], pairs.observed[i]);
  return sum / static_cast<double>(pairs.size());
}

double square(double x) { return x * x; }

double mean_square_error(const Judged& pairs) {
  return mean_of(pairs, [](double f, double o) { return square(f - o); });
}

struct Moments {
  double forecast_mean = 0.0, observed_mean = 0.0;
  double forecast_variance = 0.0, observed_variance = 0.0, covariance = 0.0;
};

Moments moments(const Judged& pairs) {
  Moments m{.forecast_mean = mean(pairs.forecast), .observed_mean = mean(pairs.observed)};
  m.forecast_variance = mean_of(pairs, [&](double f, double) { return square(f - m.forecast_mean); });
  m.observed_variance = mean_of(pairs, [&](double, double o) { return square(o - m.observed_mean); });
  m.covariance = mean_of(pairs, [&](double f, double o) { return (f - m.forecast_mean) * (o - m.observed_mean); });
  return m;
}

Absent nothing_varied() { return {"nothing varied in what was observed"}; }

}  // namespace

Judged usable_pairs(std::span<const double> forecast, std::span<const double> observed, Keep keep) {
  assert(forecast.size() == observed.size());
  const auto usable = [&](double x) { return std::isfinite(x) && (keep == Keep::Finite || x > 0.0); };
  Judged pairs;
  for (std::size_t i = 0; i < observed.size(); ++i) {
    if (!usable(forecast[i]) || !usable(observed[i])) continue;
    pairs.forecast.push_back(forecast[i]);
    pairs.observed.push_back(observed[i]);
  }
  return pairs;
}

double mean_error(const Judged& pairs) {
  return mean_of(pairs, [](double f, double o) { return f - o; });
}

double mean_absolute_error(const Judged& pairs) {
  return mean_of(pairs, [](double f, double o) { return std::abs(f - o); });
}

double root_mean_square_error(const Judged& pairs) { return std::sqrt(mean_square_error(pairs)); }

Measured<double> nash_sutcliffe(const Judged& pairs) {
  if (pairs.size() == 0) return Absent{"no pair to judge by"};
  const double observed_mean = mean(pairs.observed);
  const double variance = mean_of(pairs, [&](double, double o) { return square(o - observed_mean); });
  if (variance == 0.0) return nothing_varied();
  return 1.0 - mean_square_error(pairs) / variance;
}

double KlingGupta::efficiency() const {
  return 1.0 - std::sqrt(square(correlation - 1.0) + square(variability - 1.0) + square(bias - 1.0));
}

Measured<KlingGupta> kling_gupta_2009(const Judged& pairs) {
  if (pairs.size() == 0) return Absent{"no pair to judge by"};
  const Moments m = moments(pairs);
  if (m.observed_variance == 0.0) return nothing_varied();
  if (m.observed_mean == 0.0) return Absent{"the mean of what was observed is zero"};
  const double spread = std::sqrt(m.forecast_variance * m.observed_variance);
  return KlingGupta{.correlation = spread > 0.0 ? m.covariance / spread : 0.0,
                    .variability = std::sqrt(m.forecast_variance / m.observed_variance),
                    .bias = m.forecast_mean / m.observed_mean};
}

Measured<KlingGupta> kling_gupta_2012(const Judged& pairs) {
  Measured<KlingGupta> score = kling_gupta_2009(pairs);
  if (!score) return score;
  if (score->bias == 0.0) return Absent{"the mean of what was forecast is zero"};
  score.value().variability /= score->bias;
  return score;
}

Measured<double> persistence_skill(const Judged& pairs, std::span<const double> held) {
  assert(held.size() == pairs.size());
  if (pairs.size() == 0) return Absent{"no pair to judge by"};
  const double of_holding = mean_square_error({{held.begin(), held.end()}, pairs.observed});
  if (of_holding == 0.0) return nothing_varied();
  return 1.0 - mean_square_error(pairs) / of_holding;
}

double crps(std::vector<double> ensemble, double observed) {
  std::sort(ensemble.begin(), ensemble.end());
  const auto m = static_cast<double>(ensemble.size());
  double miss = 0.0,
         spread = 0.0;  // sum |x - y|; sum over pairs i < j of x_j - x_i, which sorting makes a weighted sum
  for (std::size_t i = 0; i < ensemble.size(); ++i) {
    miss += std::abs(ensemble[i] - observed);
    spread += ensemble[i] * (2.0 * static_cast<double>(i) - m + 1.0);
  }
  return miss / m - spread / (m * m);
}

double brier(std::span<const double> chances, const std::vector<bool>& happened) {
  assert(!chances.empty() && chances.size() == happened.size());
  double sum = 0.0;
  for (std::size_t i = 0; i < chances.size(); ++i) sum += square(chances[i] - (happened[i] ? 1.0 : 0.0));
  return sum / static_cast<double>(chances.size());
}

double coverage(std::span<const double> low, std::span<const double> high, std::span<const double> observed) {
  assert(!observed.empty() && low.size() == observed.size() && high.size() == observed.size());
  std::size_t inside = 0;
  for (std::size_t i = 0; i < observed.size(); ++i)
    if (low[i] <= observed[i] && observed[i] <= high[i]) ++inside;
  return static_cast<double>(inside) / static_cast<double>(observed.size());
}

}  // namespace floatwright
