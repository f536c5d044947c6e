#pragma once
// What the next gauge up the river has already shown, for the forecast at the gauge below it.
#include "engine/readings/gauge_record.hpp"

namespace floatwright {

struct FromAbove {
  // The flow at the gauge above brought down to this one, at the instants when it arrives here. A row is known a `lag`
  // before its instant and no earlier: at instant t nothing after t + lag.
  Series<Discharge> routed;
  Period lag{};
  bool below_dam = false;  // both gauges stand below one ramping dam: inside the lag this flow is the forecast
};

}  // namespace floatwright
