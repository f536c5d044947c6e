#include "engine/routing/closing.hpp"

#include <algorithm>
#include <cmath>

namespace floatwright {
namespace {

constexpr int kPasses = 4;          // a mean of a mean lags a trend; each pass takes up what is left of it
constexpr double kMostTaken = 0.9;  // of the routed flow

}  // namespace

std::vector<Discharge> daily_mean(const std::vector<Discharge>& flow, Period step) {
  const std::size_t n = flow.size();
  const std::size_t window =
      std::clamp<std::size_t>(static_cast<std::size_t>(std::chrono::hours{24} / step), 1, std::max<std::size_t>(n, 1));
  std::vector<Discharge> sums(n + 1), means(n);
  for (std::size_t i = 0; i < n; ++i) sums[i + 1] = sums[i] + flow[i];
  for (std::size_t i = 0; i < n; ++i) {
    const std::size_t first = std::min(i > window / 2 ? i - window / 2 : 0, n - window);
    means[i] = (sums[first + window] - sums[first]) / static_cast<double>(window);
  }
  return means;
}

Closing closing_inflow(const std::vector<Discharge>& routed, const std::vector<Discharge>& gauge, Period step,
                       std::optional<double> bound) {
  const std::vector<Discharge> typical = daily_mean(routed, step);
  Closing closing{std::vector<Discharge>(routed.size()), 0.0};
  for (int pass = 0; pass < kPasses; ++pass) {
    std::vector<Discharge> missing(routed.size());
    for (std::size_t i = 0; i < routed.size(); ++i) missing[i] = gauge[i] - routed[i] - closing.inflow[i];
    const std::vector<Discharge> mean = daily_mean(missing, step);
    for (std::size_t i = 0; i < routed.size(); ++i) closing.inflow[i] = closing.inflow[i] + mean[i];
  }
  for (std::size_t i = 0; i < routed.size(); ++i) {
    if (!(typical[i] > Discharge{})) continue;
    closing.largest_share = std::max(closing.largest_share, std::abs(closing.inflow[i] / typical[i]));
    const Discharge least = -std::min(bound.value_or(kMostTaken), kMostTaken) * typical[i];
    closing.inflow[i] = std::max(closing.inflow[i], least);
    if (bound) closing.inflow[i] = std::min(closing.inflow[i], *bound * typical[i]);
  }
  return closing;
}

}  // namespace floatwright
