#pragma once
// An agency's forecast set to what the gauge reads: times the ratio of the newest reading to what was forecast for that
// moment, the ratio fading by e^-(lead/12 h). Where the reading is under 20 times the step to which the forecast is
// rounded, its level says nothing: then the gauge's own level and the forecast change.
#include <optional>

#include "engine/forecast/flow_history.hpp"

namespace floatwright {

struct OfficialAhead {
  Series<Discharge> flow;  // above zero
  Instant from{};          // the newest reading
  double ln_now = 0.0;     // ln Q there
  double ln_then = 0.0;    // ln Q that was forecast for it
  bool change_only = false;

  [[nodiscard]] Instant until() const { return flow.times.back(); }
  [[nodiscard]] double ratio() const;  // of reading to forecast
  // None before `from`, after `until`, and across gaps of over a day.
  [[nodiscard]] std::optional<double> ln_flow(Instant t) const;
};

// None where it does not reach both sides of the newest reading; a first row up to 6 h after it will do.
[[nodiscard]] std::optional<OfficialAhead> official_ahead(const OfficialForecast& forecast, const FlowHistory& history);

}  // namespace floatwright
