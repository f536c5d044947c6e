#include "engine/forecast/daily_forecast.hpp"

#include <algorithm>
#include <cmath>

#include "engine/forecast/daily_change.hpp"
#include "engine/statistics/shrunk_regression.hpp"

namespace floatwright {
namespace {

constexpr double kFarthestLevel = 3.0;
constexpr std::size_t kRiseBeganDaysAgo = 3;  // days
constexpr double kHalfTrusted = 500.0;        // past days at which like days get half of the half they may get

// Not-a-number comes through both.
double rise(double change) { return std::max(change, 0.0); }
double fall(double change) { return std::min(change, 0.0); }

// What the gauge above changed by in a day, as ln of the ratio that this would make of the flow here.
double added_by(const DailyRecord& above, double ln_flow, std::size_t t) {
  if (t == 0) return above.change(t);
  const double share = (std::exp(above.ln_flow[t]) - std::exp(above.ln_flow[t - 1])) / std::exp(ln_flow);
  return share > 0.0 ? std::log1p(share) : -std::log1p(-share);
}

// A headwater that rises tenfold brings no more than its own water, and the land between as much again: judgement.
double most_to_come(const DailyRecord& above, double ln_flow, std::size_t t) {
  return std::log1p(2.0 * std::exp(above.ln_flow[t] - ln_flow));
}

double d_before(const DailyRecord& record, std::size_t t) { return record.change(t == 0 ? 0 : t - 1); }

}  // namespace

DailyRegressors daily_regressors(const DailyData& data, std::size_t t) {
  const double d = data.own.change(t), d1 = d_before(data.own, t);
  const double level = std::clamp(data.own.ln_flow[t] - data.ln_median, -kFarthestLevel, kFarthestLevel);
  DailyRegressors row{rise(d), fall(d), rise(d1), fall(d1), level, rise(d) * level};
  if (!data.above) return row;
  const double came = added_by(*data.above, data.own.ln_flow[t], t), more = data.above->change(t) - d;
  row[6] = rise(came);
  row[7] = fall(came);
  row[8] = std::min(rise(more), most_to_come(*data.above, data.own.ln_flow[t], t));
  row[9] = fall(more);
  return row;
}

DailyRegressors daily_prior(int days, bool with_above) {
  const DailyCoefficients b = untuned_daily(days);
  DailyRegressors prior{b.rise, b.fall, b.rise_before, b.fall_before};
  if (with_above) {
    prior[8] = 0.5;
    prior[9] = 0.1;
  }
  return prior;
}

double fitted_change(const DailyData& data, const LikeDays* like, const DailyRegressors& coefficients, std::size_t t,
                     int days) {
  const double by_regression = dot(coefficients, daily_regressors(data, t));
  if (like == nullptr) return by_regression;
  const LikeDays::Change by_like_days = like->after(t, days);
  if (by_like_days.known == 0) return by_regression;
  const auto known = static_cast<double>(by_like_days.known);
  const double share = 0.5 * known / (known + kHalfTrusted);
  return (1.0 - share) * by_regression + share * by_like_days.change;
}

double recent_daily_change(const DailyRecord& record, std::size_t t) {
  std::vector<double> changes;
  for (std::size_t s = t + 1 > kRecentDays ? t + 1 - kRecentDays : 0; s <= t; ++s) changes.push_back(record.change(s));
  return mean_size(changes, 0, changes.size());
}

std::optional<double> least_change_after_rise(const DailyRecord& record, std::size_t t, int days) {
  if (daily_state(record.change(t)) != FlowState::Rising) return std::nullopt;
  double before = record.ln_flow[t];
  for (std::size_t s = t > kRiseBeganDaysAgo ? t - kRiseBeganDaysAgo : 0; s < t; ++s)
    before = std::fmin(before, record.ln_flow[s]);  // what is not known does not count
  return before - record.ln_flow[t] + default_daily_band(FlowState::Falling, days, recent_daily_change(record, t)).low;
}

double untuned_change(const DailyRecord& record, std::size_t t, int days) {
  return untuned_change({record.change(t), d_before(record, t)}, days);
}

}  // namespace floatwright
