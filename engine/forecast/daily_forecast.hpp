#pragma once
// The forecast from daily means: the change of y = ln Q from the end of day t to the mean of the day `days` later. In
// the mean of two ways, regression and like days; with a gauge above by the regression alone. Only what was known at
// the end of day t is used: the own mean of that day and of those before, and the gauge above's of the same days.
#include <optional>

#include "engine/forecast/like_days.hpp"
#include "engine/forecast/tuned_daily_flow.hpp"

namespace floatwright {

using DailyRegressors = std::array<double, kDailyTerms>;

struct DailyData {
  DailyRecord own;
  std::optional<DailyRecord> above;  // on the days of `own`
  double ln_median = 0.0;
};

// In the order of kDailyTermWords; holes are not-a-number.
[[nodiscard]] DailyRegressors daily_regressors(const DailyData& data, std::size_t t);

// What the regression is shrunk to: the untuned coefficients; of what the gauge above changed more than the own a half
// on the rise and a tenth on the fall (pooled from the earlier halves of eleven pairs of gauges; judgement).
[[nodiscard]] DailyRegressors daily_prior(int days, bool with_above);

// Ahead of day t by regression and, where `like` is given, like days, whose share n/(n + 500)/2 nears the half as past
// days are gathered. Not-a-number where a day it needs is not known.
[[nodiscard]] double fitted_change(const DailyData& data, const LikeDays* like, const DailyRegressors& coefficients,
                                   std::size_t t, int days);
// Mean |d| of the last 30 days; not-a-number where under ten are known.
[[nodiscard]] double recent_daily_change(const DailyRecord& record, std::size_t t);
// Of a river that rises on day t, the least change over `days` that its band reaches down to: the rise of the last three
// days undone and the flow before it sunk as a falling river's low case. None in other states.
[[nodiscard]] std::optional<double> least_change_after_rise(const DailyRecord& record, std::size_t t, int days);
[[nodiscard]] double untuned_change(const DailyRecord& record, std::size_t t, int days);

}  // namespace floatwright
