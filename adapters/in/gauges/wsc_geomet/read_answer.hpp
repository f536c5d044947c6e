#pragma once
// The hydrometric collections of the Meteorological Service of Canada's OGC API: hydrometric-realtime (instants in UTC)
// and hydrometric-daily-mean (dates). GeoJSON, one feature an instant with water level (m) and discharge (m3/s) side by
// side; null is missing. Numbers went through single precision on their way: 19.299999237060547 is 19.3.
#include <string>
#include <string_view>

#include "adapters/result.hpp"
#include "engine/readings/reading.hpp"

namespace floatwright {

[[nodiscard]] bool is_wsc_geomet(std::string_view bytes);
[[nodiscard]] Result<GaugeAnswer> read_wsc_geomet(std::string_view bytes, const std::string& where);

}  // namespace floatwright
