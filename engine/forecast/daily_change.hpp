#pragma once
// What a river does by its daily means alone, and how it goes on where nothing is fitted. y = ln Q, d the newest day's
// change of y and d1 that of the day before. All numbers are judgement, from 39 gauges' records (docs/equations.md).
#include "engine/forecast/flow_band.hpp"

namespace floatwright {

struct DailyChange {
  double d = 0.0, d1 = 0.0;
};

// Rising over 15 % in a day, EdgingUp 2 to 15 %, Falling under -2 %, else Steady.
[[nodiscard]] FlowState daily_state(double d);

// Falling and steady days err alike: past errors of both are kept under Falling.
[[nodiscard]] FlowState errs_as(FlowState state);

// Coefficients of max(d,0), min(d,0), max(d1,0), min(d1,0) in y(t + days) - y(t); days 1 or 2.
struct DailyCoefficients {
  double rise = 0.0, fall = 0.0, rise_before = 0.0, fall_before = 0.0;
};
[[nodiscard]] DailyCoefficients untuned_daily(int days);
[[nodiscard]] double untuned_change(DailyChange change, int days);

// The stated band, times sqrt(recent / 0.10) within 0.5 and 2: `recent` is the mean |d| of the last 30 days, or
// not-a-number where it is not known.
[[nodiscard]] LnBand default_daily_band(FlowState state, int days, double recent);

}  // namespace floatwright
