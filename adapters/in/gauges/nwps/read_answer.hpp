#pragma once
// Stage and flow of the National Water Prediction Service: /gauges/ID/stageflow with the blocks observed and forecast,
// one such block alone, and the newest values of /gauges/ID. Which of the two columns is the flow is told by names and
// units, not by place; -999 and -9999 are missing, as is a time in year 1. A forecast's series has the time of issue.
//
// The stageflow answers do not name their gauge: it is taken from the address or file that the bytes came from, behind
// "gauges" ("https://.../gauges/FIHM1/stageflow", "gauges_FIHM1_stageflow.json").
#include <string>
#include <string_view>

#include "adapters/result.hpp"
#include "engine/readings/reading.hpp"

namespace floatwright {

[[nodiscard]] bool is_nwps(std::string_view bytes);
[[nodiscard]] Result<GaugeAnswer> read_nwps(std::string_view bytes, const std::string& where);

}  // namespace floatwright
