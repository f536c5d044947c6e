#pragma once
// The real-time web service of the Water Survey of Canada: CSV, one row a station, instant and parameter, times in UTC.
// Read are the primary sensors: 46 water level (m), 47 discharge (m3/s), 5 water temperature (C). Nothing found is the
// header alone.
#include <string>
#include <string_view>

#include "adapters/result.hpp"
#include "engine/readings/reading.hpp"

namespace floatwright {

[[nodiscard]] bool is_wsc_realtime(std::string_view bytes);
[[nodiscard]] Result<GaugeAnswer> read_wsc_realtime(std::string_view bytes, const std::string& where);

}  // namespace floatwright
