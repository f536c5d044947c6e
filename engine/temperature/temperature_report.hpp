#pragma once
// How good the curve of water temperature has been on the part of a gauge's record that it was not fitted to.
#include <string>
#include <vector>

#include "engine/units/instant.hpp"
#include "engine/units/temperature.hpp"

namespace floatwright {

struct TemperatureScoreRow {
  Period lead{};
  std::size_t origins = 0;
  TemperatureChange tuned, untuned, same_hour;  // mean |error|; the last: the newest reading of that hour of the day
  std::size_t banded = 0;                       // origins with a band
  double inside_band = 0.0;                     // share of `banded` between P10 and P90, only errors known by then
  double inside_untuned = 0.0;                  // of the untuned curve, its band from the last 20 days
  double inside_stated = 0.0;                   // of the untuned curve in the stated band, for a gauge without a past
};

// The highest reading of a local day, as seen from 06 h.
struct MaximumScore {
  std::size_t days = 0;
  TemperatureChange error, bias;            // mean |error|, and mean of forecast less seen
  TemperatureChange rule_error, rule_bias;  // of yesterday's maximum and half the change since yesterday 06 h
  TemperatureChange yesterday_error;        // of yesterday's maximum
};

// Whether the high case called the hour at which water too warm to fish comes, half an hour before it.
struct StopScore {
  int seen_from = 6;            // local hour
  bool evening_before = false;  // of the day before
  std::size_t came = 0, named_in_time = 0;
  std::size_t others = 0, called_in_vain = 0;  // days on which it did not come
};

struct TemperatureReport {
  std::string gauge;
  Instant fitted_from{}, fitted_until{}, judged_until{};  // judged from `fitted_until` on
  std::vector<TemperatureScoreRow> rows;                  // ascending leads
  MaximumScore maximum;
  std::vector<StopScore> stops;
  std::vector<std::string> notes;
};

}  // namespace floatwright
