#pragma once
// What was fitted to the water temperature recorded at one gauge, as it is kept on disk and read by a plan. Without it
// a plan carries the daily curve on with stated shares and bands.
#include <optional>
#include <string>
#include <vector>

#include "engine/units/instant.hpp"
#include "engine/units/temperature.hpp"
#include "engine/units/unit.hpp"

namespace floatwright {

struct TunedTemperatureLead {
  Duration lead;
  bool used = false;                 // it erred less than the untuned method on the part that it was judged on
  std::vector<double> coefficients;  // of the regressors in temperature_regressors.hpp, in their order
  double low = 0.0, high = 0.0;      // P10 and P90 of past errors, each over the mean error of the 20 days before it
  TemperatureChange mean_error;      // the mean size of the record's last 20 days of errors
  int errors = 0;                    // that the quantiles stand on
};

struct TunedTemperature {
  std::string gauge;  // id
  Instant made_on{};
  Instant from{}, to{};                     // first and last reading of the record it was fitted to
  std::vector<TunedTemperatureLead> leads;  // ascending
  // Kelvin that the day's mean temperature of the water moves by for each that the air's does; none: no air was given.
  std::optional<double> air_share;
};

}  // namespace floatwright
