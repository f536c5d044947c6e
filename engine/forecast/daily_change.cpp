#include "engine/forecast/daily_change.hpp"

#include <algorithm>
#include <cmath>

namespace floatwright {
namespace {

constexpr double kUsualChange = 0.10;  // mean |d| at which the stated bands hold

LnBand stated_band(FlowState state, int days) {
  const bool one = days <= 1;
  if (state == FlowState::Rising) return one ? LnBand{0.72, 1.65} : LnBand{0.62, 1.85};
  if (state == FlowState::EdgingUp) return one ? LnBand{0.88, 1.30} : LnBand{0.84, 1.40};
  return one ? LnBand{0.92, 1.13} : LnBand{0.87, 1.30};
}

}  // namespace

FlowState daily_state(double d) {
  const double change = std::expm1(d);
  if (change > 0.15) return FlowState::Rising;
  if (change > 0.02) return FlowState::EdgingUp;
  return change < -0.02 ? FlowState::Falling : FlowState::Steady;
}

FlowState errs_as(FlowState state) { return state == FlowState::Steady ? FlowState::Falling : state; }

DailyCoefficients untuned_daily(int days) {
  if (days <= 1) return {.rise = 0.0, .fall = 0.50, .rise_before = -0.25, .fall_before = 0.16};
  return {.rise = -0.28, .fall = 0.75, .rise_before = -0.39, .fall_before = 0.37};
}

double untuned_change(DailyChange change, int days) {
  const DailyCoefficients b = untuned_daily(days);
  return b.rise * std::max(change.d, 0.0) + b.fall * std::min(change.d, 0.0) +
         b.rise_before * std::max(change.d1, 0.0) + b.fall_before * std::min(change.d1, 0.0);
}

LnBand default_daily_band(FlowState state, int days, double recent) {
  const LnBand ratio = stated_band(state, days);
  const double scale = std::isnan(recent) ? 1.0 : std::clamp(std::sqrt(recent / kUsualChange), 0.5, 2.0);
  return {scale * std::log(ratio.low), scale * std::log(ratio.high)};
}

}  // namespace floatwright
