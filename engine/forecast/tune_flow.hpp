#pragma once
// Fits the forecast of one gauge's flow to its own sub-daily record: on the first half, judged on the second, then on
// the whole, which is what is kept. Methods: docs/equations.md.
#include <string>

#include "engine/forecast/flow_report.hpp"
#include "engine/forecast/from_above.hpp"
#include "engine/forecast/tuned_flow.hpp"
#include "engine/readings/gauge_record.hpp"

namespace floatwright {

struct FlowTuningInputs {
  const GaugeRecord& record;
  bool below_dam = false;  // one that ramps
  std::string time_zone;
  const FromAbove* above = nullptr;  // over the whole record
  Instant made_on{};
  const FromAbove* above_then = nullptr;  // the same brought down with what was known at its middle; none: as `above`
};

struct FlowTuning {
  Measured<TunedFlow> tuned;  // Absent where the record is too short to be judged
  FlowReport report;
};

[[nodiscard]] FlowTuning tune_flow(const FlowTuningInputs& in);

}  // namespace floatwright
