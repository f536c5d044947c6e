#pragma once
// Fits the curve of water temperature to a gauge's own record: by lead, least absolute error shrunk to the untuned
// shares with the weight of 300 hours. Fitted to the first half and judged on the second; what is kept is then fitted
// to the whole, its bands from the judged part.
#include "engine/readings/gauge_record.hpp"
#include "engine/temperature/temperature_report.hpp"
#include "engine/temperature/tuned_temperature.hpp"
#include "engine/units/unit.hpp"

namespace floatwright {

struct TemperatureTuningInputs {
  const GaugeRecord& record;     // all of it
  Series<Temperature> air = {};  // as it was, where the river is; empty: not known
  std::string time_zone;         // days are local; unknown names count in UTC
  Instant made_on{};
  Temperature stop = fahrenheit(70.0);  // the stop hour that is judged
};

struct TemperatureTuning {
  std::optional<TunedTemperature> tuned;  // none: too little record, as a note says
  TemperatureReport report;
};

[[nodiscard]] TemperatureTuning tune_temperature(const TemperatureTuningInputs& in);

}  // namespace floatwright
