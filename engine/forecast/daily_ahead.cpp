#include "engine/forecast/daily_ahead.hpp"

#include <algorithm>
#include <cmath>

#include "engine/forecast/daily_change.hpp"
#include "engine/forecast/daily_fit.hpp"
#include "engine/forecast/daily_misses.hpp"

namespace floatwright {
namespace {

// What the fit says of the last day of `own` and of the month before it, from which its late errors are known.
struct Fitted {
  DailyData data;
  std::optional<LikeDays> like;

  Fitted(const DailyRecord& own, const TunedDailyFlow& tuned, const DailyRecord* above)
      : data{.own = joined(tuned.library, own), .above = {}, .ln_median = std::log(tuned.median.si())} {
    if (above != nullptr) data.above = on_the_days_of(data.own, *above);
    if (tuned.gauge_above.empty()) like.emplace(data.own, data.ln_median);
  }

  [[nodiscard]] double change(const TunedDailyLead& lead, std::size_t t) const {
    return fitted_change(data, like ? &*like : nullptr, lead.coefficients, t, lead.days);
  }
  // Of the forecasts whose outcome came in the last 30 days; of all past ones where too few did.
  [[nodiscard]] double scale(const TunedDailyLead& lead) const {
    const std::size_t last = data.own.size() - 1, back = kRecentDays + static_cast<std::size_t>(lead.days);
    std::vector<double> changes(data.own.size(), std::nan(""));
    for (std::size_t t = last > back ? last - back : 0; t < last; ++t) changes[t] = change(lead, t);
    const double recent = mean_miss(misses_of(data.own, changes, lead.days), last, kRecentDays);
    return miss_scale(lead.mean_miss, std::isnan(recent) ? lead.mean_miss : recent);
  }
};

DayAhead untuned_day(const DailyRecord& own, FlowState state, int days) {
  const std::size_t last = own.size() - 1;
  DayAhead day;
  const double change = untuned_change(own, last, days);
  day.change = std::isnan(change) ? 0.0 : change;
  const LnBand stated =
      default_daily_band(state == FlowState::Unknown ? FlowState::Rising : state, days, recent_daily_change(own, last));
  day.band = not_under(least_change_after_rise(own, last, days), stated, day.change);
  return day;
}

}  // namespace

DailyAhead daily_ahead(const DailyRecord& own, const TunedDailyFlow* tuned, const DailyRecord* above) {
  DailyAhead ahead;
  const double d = own.change(own.size() - 1);
  if (!std::isnan(d)) {
    ahead.d = d;
    ahead.state = daily_state(d);
  }
  for (std::size_t i = 0; i < ahead.days.size(); ++i)
    ahead.days[i] = untuned_day(own, ahead.state, static_cast<int>(i) + 1);
  if (tuned == nullptr || tuned->median <= Discharge{}) return ahead;
  if (!tuned->gauge_above.empty() && above == nullptr) return ahead;
  const Fitted fitted(own, *tuned, above);
  for (const TunedDailyLead& lead : tuned->leads) {
    if (!lead.used || lead.days < 1 || lead.days > static_cast<int>(ahead.days.size())) continue;
    const double change = fitted.change(lead, fitted.data.own.size() - 1);
    const auto band = past_band(tuned->skill.errors, errs_as(ahead.state), lead.days);
    if (std::isnan(change) || !band) continue;
    const double scale = fitted.scale(lead);
    const LnBand scaled{band->low * scale, band->high * scale};
    const auto least = least_change_after_rise(own, own.size() - 1, lead.days);
    ahead.days[static_cast<std::size_t>(lead.days) - 1] = {change, not_under(least, scaled, change), true};
  }
  return ahead;
}

}  // namespace floatwright
