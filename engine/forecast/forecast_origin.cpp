#include "engine/forecast/forecast_origin.hpp"

#include <algorithm>
#include <cmath>

#include "engine/units/unit.hpp"

namespace floatwright {
namespace {

constexpr double kLeastShare = 0.1;    // of its flow that a gauge keeps, whatever the gauge above lost; judgement
constexpr double kReadingFades = 2.0;  // h; judgement
constexpr Period kMeanOf = std::chrono::hours{24};

// m3/s, linear between rows no further apart than a bridged gap.
std::optional<double> routed_at(const FromAbove& above, Instant t) {
  const auto flow = value_at(above.routed, t, kWidestBridgedGap);
  return flow ? std::optional(flow->si()) : std::nullopt;
}

// What this gauge has read over the routed flow.
std::optional<double> residual_at(const ForecastOrigin& origin, Instant t) {
  const auto own = origin.history.ln_flow(t);
  const auto routed = routed_at(*origin.above, t);
  if (!own || !routed) return std::nullopt;
  return std::exp(*own) - *routed;
}

std::optional<double> mean_residual(const ForecastOrigin& origin) {
  double sum = 0.0;
  int hours = 0;
  for (Period back{}; back < kMeanOf; back += std::chrono::hours{1})
    if (const auto residual = residual_at(origin, origin.at() - back)) {
      sum += *residual;
      ++hours;
    }
  return hours == 0 ? std::nullopt : std::optional(sum / hours);
}

}  // namespace

double ForecastOrigin::ln_now() const { return std::log(history.rows.values.back().si()); }

LnCases ForecastOrigin::untuned(Instant t) const {
  if (state == FlowState::Regulated)
    if (const auto cases = same_hour(history, t, time_zone)) return *cases;
  return by_state(history, state, after_wave, t);
}

Instant told_from_above_until(const ForecastOrigin& origin) {
  if (origin.above == nullptr || origin.above->routed.empty()) return origin.at();
  return std::clamp(origin.above->routed.times.back(), origin.at(),
                    origin.at() + std::max(origin.above->lag, Period{}));
}

double change_from_above(const ForecastOrigin& origin, Instant t) {
  if (origin.above == nullptr) return 0.0;
  const auto now = routed_at(*origin.above, origin.at());
  const auto then = routed_at(*origin.above, std::min(t, told_from_above_until(origin)));
  if (!now || !then) return 0.0;
  const double own = std::exp(origin.ln_now());
  return std::log(std::max(own + *then - *now, kLeastShare * own) / own);
}

std::optional<double> ln_from_above(const ForecastOrigin& origin, Instant t) {
  const bool known = origin.above != nullptr && origin.above->below_dam && t <= told_from_above_until(origin);
  if (!known) return std::nullopt;
  const auto routed = routed_at(*origin.above, t);
  const auto usual = mean_residual(origin);
  if (!routed || !usual) return std::nullopt;
  const double lead = in_hours(duration(t - origin.at()));
  const double newest = residual_at(origin, origin.at()).value_or(*usual);
  const double residual = *usual + (newest - *usual) * std::exp(-lead / kReadingFades);
  return std::log(std::max(*routed + residual, kLeastShare * std::exp(origin.ln_now())));
}

}  // namespace floatwright
