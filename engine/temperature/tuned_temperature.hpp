#pragma once
// What was fitted to the water temperature recorded at one gauge, as it is kept on disk and read by a plan. Without it
// a plan carries the daily curve on with stated shares and bands.
#include <array>
#include <optional>
#include <string>
#include <string_view>
#include <vector>

#include "engine/units/instant.hpp"
#include "engine/units/temperature.hpp"

namespace floatwright {

// The regressors of T(t+h) - T(t+h-24k h), k the least whole days, in the order of the coefficients; all C but the
// season: T(t) - T(t-24 h); what that has grown by in the last 3 h; the last day's mean less that of the day before;
// the change from t to t+h on the last five days less that of the last one; the 10-day mean less the last day's; the
// 30-day mean less the 10-day one (0 where not known); cosine and sine of the day of the year.
inline constexpr std::size_t kTemperatureTerms = 8;
inline constexpr std::array<std::string_view, kTemperatureTerms> kTemperatureTermWords{
    "change", "change_3h", "day_mean", "five_days", "gap_10_days", "gap_30_days", "season_cos", "season_sin"};
using TemperatureCoefficients = std::array<double, kTemperatureTerms>;

struct TunedTemperatureLead {
  Period lead{};
  bool used = false;                       // false: it was no better than the untuned method, whose coefficients stand
  TemperatureCoefficients coefficients{};  // at this lead; straight lines between leads
  double low = 0.0, high = 0.0;  // P10 and P90 of past errors, each over the mean |error| of the 20 days before it
  TemperatureChange mean_error;  // mean |error| of the record's last 20 days
  std::size_t errors = 0;        // that the quantiles stand on
};

struct TunedTemperature {
  std::string gauge;    // id in river.json
  std::string station;  // whose record it was fitted to: at a gauge that now names another it is not used
  Instant made_on{};
  Instant record_from{}, record_to{};       // first and last reading of the record it is fitted to
  std::vector<TunedTemperatureLead> leads;  // ascending
  TemperatureChange maximum_missed;         // mean of a day's maximum less that of the curve seen from 06 h
  // Share of the change in the air's daily mean that the water's takes up; none: no air was given.
  std::optional<double> air_share;
};

}  // namespace floatwright
