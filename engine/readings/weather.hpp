#pragma once
// The weather where the river is, as an agency forecasts it or a person typed it. Empty series: not known.
#include "engine/readings/gauge_record.hpp"

namespace floatwright {

struct Weather {
  std::string station;
  Instant issued{};
  Series<Temperature> air;
  Series<Speed> rain;  // depth in time; 12 mm in 24 h is a long wet day
  Series<Speed> wind;
};

}  // namespace floatwright
