#pragma once
// One gauge's flow ahead of its newest reading: the untuned method, moved by what was fitted to the gauge and by what a
// gauge above has shown. Between the leads that were fitted the departure from the untuned method, in ln, is a straight
// line, so that a daily wave or a dam's day keeps its shape.
#include <utility>
#include <vector>

#include "engine/forecast/flow_band.hpp"
#include "engine/forecast/forecast_origin.hpp"
#include "engine/forecast/tuned_flow.hpp"

namespace floatwright {

struct FlowAhead {
  ForecastOrigin origin;
  std::vector<std::pair<Period, double>> departures;  // ln; empty: none
  std::vector<std::pair<Period, LnBand>> bands;       // about the middle; empty: the untuned method's
  bool tuned = false;                                 // a fitted lead is used

  // The newest instant that the gauge above decides; the origin where there is none.
  [[nodiscard]] Instant seen_above_until() const;
  // Past two days ahead the band widens as that of a flow that is held; below a ramping dam it does not.
  [[nodiscard]] LnCases at(Instant t) const;

 private:
  [[nodiscard]] LnCases banded_at(Instant t) const;
};

// `tuned` may be null.
[[nodiscard]] FlowAhead flow_ahead(ForecastOrigin origin, const TunedFlow* tuned);

}  // namespace floatwright
