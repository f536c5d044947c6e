#pragma once
// One way of forecasting from daily means, fitted to a part of a record, and what it forecasts.
#include <vector>

#include "engine/forecast/daily_forecast.hpp"
#include "engine/forecast/daily_misses.hpp"

namespace floatwright {

// Rows of a record, from the first to before the last.
struct DaySpan {
  std::size_t from = 0, to = 0;

  [[nodiscard]] std::size_t size() const { return to - from; }
};

// A gauge's record and what is derived from it once, for all leads.
struct DailyWay {
  DailyData data;
  std::optional<LikeDays> like;  // none with a gauge above
};
[[nodiscard]] double ln_median_of(const DailyRecord& own, DaySpan span);  // 0 where no day is known
// The median of the days in `fitted_to` is the level 0.
[[nodiscard]] DailyWay daily_way(const DailyRecord& own, const DailyRecord* above, DaySpan fitted_to);

// From the origins in `part` whose outcome lies there too, those in `but` and those with an outcome in it left out.
[[nodiscard]] DailyRegressors fitted_to(const DailyWay& way, int days, DaySpan part, DaySpan but = {});

// Changes of y from each day of `part`, fitted to the rest of it by turns in five blocks: what was forecast is known
// nowhere to the fit. Not-a-number outside `part`.
[[nodiscard]] std::vector<double> forecast_by_turns(const DailyWay& way, int days, DaySpan part);

[[nodiscard]] DailyMisses misses_of(const DailyRecord& own, const std::vector<double>& changes, int days);

}  // namespace floatwright
