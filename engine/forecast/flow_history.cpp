#include "engine/forecast/flow_history.hpp"

#include <algorithm>
#include <cmath>

#include "engine/units/unit.hpp"

namespace floatwright {
namespace {

bool all_multiples(const std::vector<double>& values, double step) {
  return std::all_of(values.begin(), values.end(), [&](double v) {
    const double times = v / step;
    return std::abs(times - std::round(times)) < 1e-6 * std::max(1.0, times);
  });
}

// Largest 10^k of which every value is a multiple, none of them finer than a hundred-thousandth of the largest.
double decimal_step(const std::vector<double>& values) {
  const double largest = *std::max_element(values.begin(), values.end());
  const double top = std::floor(std::log10(largest));
  for (double power = top; power > top - 5.0; power -= 1.0)
    if (const double step = std::pow(10.0, power); all_multiples(values, step)) return step;
  return 0.0;
}

}  // namespace

std::optional<double> FlowHistory::ln_flow(Instant t) const {
  const auto& times = rows.times;
  if (times.empty() || t < times.front() || t > times.back()) return std::nullopt;
  const auto after = static_cast<std::size_t>(std::lower_bound(times.begin(), times.end(), t) - times.begin());
  if (times[after] == t) return std::log(rows.values[after].si());
  const std::size_t before = after - 1;
  if (times[after] - times[before] > kWidestBridgedGap) return std::nullopt;
  const double share = duration(t - times[before]) / duration(times[after] - times[before]);
  return std::log((rows.values[before] * (1.0 - share) + rows.values[after] * share).si());
}

double FlowHistory::ln_flow_or_between(Instant t) const {
  if (const auto y = ln_flow(t)) return *y;
  const auto& times = rows.times;
  if (t <= times.front()) return std::log(rows.values.front().si());
  if (t >= times.back()) return std::log(rows.values.back().si());
  const auto after = static_cast<std::size_t>(std::upper_bound(times.begin(), times.end(), t) - times.begin());
  const double share = duration(t - times[after - 1]) / duration(times[after] - times[after - 1]);
  return std::log(rows.values[after - 1].si()) * (1.0 - share) + std::log(rows.values[after].si()) * share;
}

std::optional<double> FlowHistory::change_6h() const {
  if (rows.empty()) return std::nullopt;
  const auto earlier = ln_flow(newest() - std::chrono::hours{6});
  if (!earlier) return std::nullopt;
  return std::log(rows.values.back().si()) - *earlier;
}

FlowHistory flow_history(const Series<Discharge>& record, Instant now) {
  FlowHistory history;
  for (std::size_t i = 0; i < record.size(); ++i) {
    const bool usable =
        record.times[i] <= now && record.values[i] > Discharge{} && std::isfinite(record.values[i].si());
    if (!usable) continue;
    history.rows.times.push_back(record.times[i]);
    history.rows.values.push_back(record.values[i]);
  }
  return history;
}

FlowHistory known_at(const FlowHistory& all, Instant t) {
  const auto& times = all.rows.times;
  const auto from = std::lower_bound(times.begin(), times.end(), t - kLookedBackOn) - times.begin();
  const auto until = std::upper_bound(times.begin(), times.end(), t) - times.begin();
  const auto& values = all.rows.values;
  return {{{times.begin() + from, times.begin() + until}, {values.begin() + from, values.begin() + until}}};
}

Discharge common_step(const std::vector<Discharge>& flows) {
  if (flows.empty()) return {};
  std::vector<double> cubic_feet, cubic_metres;  // ft3/s, m3/s
  for (const Discharge flow : flows) {
    cubic_feet.push_back(in_cubic_feet_per_second(flow));
    cubic_metres.push_back(in_cubic_metres_per_second(flow));
  }
  return std::max(cubic_feet_per_second(decimal_step(cubic_feet)), cubic_metres_per_second(decimal_step(cubic_metres)));
}

Discharge rounding_step(const FlowHistory& history) {
  if (history.rows.empty()) return {};
  const auto& [times, values] = history.rows;
  const auto from = std::lower_bound(times.begin(), times.end(), history.newest() - std::chrono::hours{72});
  const Discharge step = common_step({values.begin() + (from - times.begin()), values.end()});
  return std::min(step, 0.01 * values.back());
}

double counted_change(double ln_change, double after, Discharge rounding) {
  const double moved_by = std::exp(after) * std::abs(std::expm1(-ln_change));  // m3/s
  return moved_by < 2.0 * rounding.si() * (1.0 - 1e-6) ? 0.0 : ln_change;
}

}  // namespace floatwright
