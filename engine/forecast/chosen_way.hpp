#pragma once
// Which way a gauge's flow is carried ahead: an agency's forecast before a typed schedule before the gauge's own
// record, and rain over all but the agency's. It keeps pointers into the inputs.
#include <optional>
#include <string>
#include <vector>

#include "engine/forecast/flow_ahead.hpp"
#include "engine/forecast/official.hpp"
#include "engine/forecast/outlook.hpp"

namespace floatwright {

struct ChosenWay {
  FlowAhead own;
  std::optional<OfficialAhead> official;
  const Dam* schedule = nullptr;
  double gauge_over_schedule = 1.0;
  std::optional<Instant> wet_from;

  [[nodiscard]] FlowMethod method(Instant until) const;
  [[nodiscard]] LnCases at(Instant t) const;
};

// Adds to `outlook` what is to be said of the way chosen. `outlook.state` is named.
[[nodiscard]] ChosenWay chosen_way(const OutlookInputs& in, const FlowHistory& history, Instant until,
                                   GaugeOutlook& outlook);

}  // namespace floatwright
