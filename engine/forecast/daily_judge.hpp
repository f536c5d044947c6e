#pragma once
// A forecast from daily means judged day by day, with only the errors that were known at each day's end.
#include <vector>

#include "engine/forecast/daily_fit.hpp"
#include "engine/forecast/flow_report.hpp"

namespace floatwright {

// ln-changes over one lead from each day; not-a-number where none can be said.
struct DailyForecasts {
  int days = 1;
  std::vector<double> changes, untuned;
};

// Untuned wherever the fit has no value, or is not to be used.
[[nodiscard]] DailyForecasts daily_forecasts(const DailyRecord& own, std::vector<double> fitted, bool used, int days);

// The mean error in m3/s over the days of `part` on which all of `compared` can be had, each as the ratio to holding
// the newest mean; empty where fewer than 60 such days are.
[[nodiscard]] std::vector<double> errors_over_holding(const DailyRecord& own, DaySpan part, int days,
                                                      const std::vector<const std::vector<double>*>& compared);

// All days of `part` together, then each state that came up.
[[nodiscard]] std::vector<FlowScoreRow> judged_rows(const DailyRecord& own, const DailyForecasts& forecasts,
                                                    DaySpan part);

}  // namespace floatwright
