#pragma once
// Observations of the hydrology service of Norway's Water Resources and Energy Directorate: series of 1000 stage (m),
// 1001 discharge (m3/s) and 1003 water temperature (C), times in UTC, null is missing. A correction above 0 (ice,
// interpolation and others) is read as an estimate. Of daily values, which are stamped 11:00 UTC, the date is kept.
#include <string>
#include <string_view>

#include "adapters/result.hpp"
#include "engine/readings/reading.hpp"

namespace floatwright {

[[nodiscard]] bool is_nve(std::string_view bytes);
[[nodiscard]] Result<GaugeAnswer> read_nve(std::string_view bytes, const std::string& where);

}  // namespace floatwright
