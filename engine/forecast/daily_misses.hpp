#pragma once
// How far the forecasts from daily means have been off, and the band that this gives. Errors are divided by a scale
// before they are ranked and multiplied by it after: all^0.4 recent^0.6, the mean |error| of all past forecasts and of
// those whose outcome came in the last 30 days, so that a band is narrow in a dry autumn and wide in a wet spring.
#include <optional>
#include <vector>

#include "engine/forecast/daily_record.hpp"
#include "engine/forecast/flow_band.hpp"
#include "engine/forecast/tuned_flow.hpp"

namespace floatwright {

struct DailyMisses {
  int days = 1;                  // lead
  std::vector<double> miss;      // by origin, ln of what came over what was forecast; not-a-number: not known
  std::vector<FlowState> state;  // by origin, as errs_as() names it
};

// Not-a-number where either is.
[[nodiscard]] double miss_scale(double all, double recent);
// Mean |miss| of the last `last` origins whose outcome was known at the end of day t; not-a-number under ten of them.
[[nodiscard]] double mean_miss(const DailyMisses& misses, std::size_t t, std::size_t last);
// By day, from what was known at its end.
[[nodiscard]] std::vector<double> miss_scales(const DailyMisses& misses);

// 10th and 90th percentile of the scaled errors known at the end of day t that are not over two years old: of all
// states, then of each that has 15 of them.
[[nodiscard]] std::vector<PastErrors> past_errors(const DailyMisses& misses, const std::vector<double>& scales,
                                                  std::size_t t);
// Those of the state and lead, else of all states at that lead; none where there are under 15.
[[nodiscard]] std::optional<LnBand> past_band(const std::vector<PastErrors>& errors, FlowState state, int days);

}  // namespace floatwright
