#pragma once
// The daily curve of water temperature at one gauge, carried forward: T(t+h) = T(t+h-24k h) + a(h) (T(t) - T(t-24 h)),
// k the least whole days that make it known. a is judgement: 1 at lead 0, then 0.85, 0.65, 0.45, 0.35, 0 at 3, 6, 12,
// 18, 24 h; on the second day it starts at 1 again, so that the curve has no step, and is 0.2 at 36 h, 0 at 48 h.
#include <optional>

#include "engine/readings/gauge_record.hpp"
#include "engine/units/measured.hpp"
#include "engine/units/per_case.hpp"

namespace floatwright {

inline constexpr Period kWidestTemperatureGap = std::chrono::hours{3};

// Share of the day-to-day change that is carried to this lead.
[[nodiscard]] double carried_share(Duration lead);

// From what was known at `origin`; none where a reading it needs is missing. Up to an hour before the record begins its
// first reading stands for the one a day before `origin`, so that a record of just one day can be carried (judgement).
[[nodiscard]] std::optional<Temperature> carried_forward(const Series<Temperature>& record, Instant origin,
                                                         Duration lead);

struct ErrorBand {
  TemperatureChange low, high;  // P10 and P90 of observed less forecast: low <= 0 <= high
  bool from_record = false;
};
// From this record's own past errors at the same lead where it holds five days, at least 20 origins; else the stated
// default: 0.8 C at 6 h to 1.5 C at 24 h (judgement). Never under 0.2 C, what a field sensor is good for (judgement).
[[nodiscard]] ErrorBand error_band(const Series<Temperature>& record, Duration lead);

// One PerCase per grid step: the past as observed, the rest carried forward from the newest reading.
// Absent "no water temperature since ..." past 48 h, or where no day before the newest reading is known.
[[nodiscard]] Measured<std::vector<PerCase<Temperature>>> gauge_curve(const Series<Temperature>& record,
                                                                      const TimeGrid& grid, Instant now);

}  // namespace floatwright
