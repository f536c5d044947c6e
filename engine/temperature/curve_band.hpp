#pragma once
// How wide the curve's cases stand apart: P10 and P90 of what came less what was forecast.
#include <optional>
#include <span>

#include "engine/temperature/curve_errors.hpp"

namespace floatwright {

struct ErrorBand {
  TemperatureChange low, high;  // low <= 0 <= high
};
// `scale` is the mean |error| of late, the quotients are P10 and P90 of errors over it. Never under 0.2 C either way,
// what a field sensor is good for (judgement).
[[nodiscard]] ErrorBand scaled_band(TemperatureChange scale, double low, double high);

// Where nothing is fitted: 1.6 times the mean |error| either way, what it is of errors spread as a normal law is.
inline constexpr double kUntunedQuotient = 1.6;

// Where there are no past errors: 0.55, 1.0, 1.4, 1.8, 2.7, 2.8 C either way at 3, 6, 12, 24, 36, 48 h (judgement; held
// to 70 to 92 % on records, docs/accuracy.md).
[[nodiscard]] ErrorBand stated_band(Period lead);

struct BandAtLead {
  Period lead{};
  ErrorBand band;
};
// Ascending leads; straight lines between them; past two days wider than at the last.
[[nodiscard]] ErrorBand band_at(std::span<const BandAtLead> bands, Period lead);

// Of forecasts from the newest reading.
[[nodiscard]] std::vector<BandAtLead> curve_bands(const HourlyTemperatures& record,
                                                  const std::optional<TunedTemperature>& tuned);

}  // namespace floatwright
