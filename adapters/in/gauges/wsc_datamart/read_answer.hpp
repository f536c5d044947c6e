#pragma once
// The hourly and daily files of the Water Survey of Canada's datamart: CSV, one row an instant with water level (m) and
// discharge (m3/s) side by side, either half may be empty; times at the station's standard offset, written out. Both
// hold readings five minutes apart, "daily" is 30 days of them. Column names repeat, so columns are told by their
// place.
#include <string>
#include <string_view>

#include "adapters/result.hpp"
#include "engine/readings/reading.hpp"

namespace floatwright {

[[nodiscard]] bool is_wsc_datamart(std::string_view bytes);
[[nodiscard]] Result<GaugeAnswer> read_wsc_datamart(std::string_view bytes, const std::string& where);

}  // namespace floatwright
