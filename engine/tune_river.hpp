#pragma once
// All that `tune` fits, in the order in which one part rests on another: the channels at the gauges, the travel of water
// between them, then each gauge's flow and water temperature.
#include <functional>
#include <vector>

#include "engine/readings/field_measurement.hpp"
#include "engine/readings/gauge_record.hpp"
#include "engine/trip/tuning.hpp"

namespace floatwright {

struct TuneParts {
  bool geometry = true, routing = true, forecast = true;
};

struct TuneInputs {
  River river;                                 // with what was fitted before, which stays where a part is not tuned
  std::vector<GaugeRecord> records;            // by River::gauges index, the whole of each
  std::vector<FieldMeasurement> measurements;  // of any station, with or without its prefix
  TuneParts parts;
  Temperature stop = fahrenheit(70.0);  // whose hour is judged
  Instant made_on{};
  std::function<void(std::size_t done, std::size_t of)> progress = [](std::size_t, std::size_t) {};
};

[[nodiscard]] Tuning tune_river(TuneInputs in);

// What is tuned now takes the place of what was tuned to the same gauges; the rest stays.
[[nodiscard]] Tuning put_together(Tuning before, Tuning now);

}  // namespace floatwright
