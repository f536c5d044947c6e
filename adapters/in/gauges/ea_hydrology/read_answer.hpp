#pragma once
// The Environment Agency's hydrology service: readings of a measure, and the list of a station's measures, which holds
// no readings and tells what could be asked for. Times are GMT without a zone; a daily value is of the water day from
// 09:00 GMT and kept under its date. Each row says how good it is.
#include <string>
#include <string_view>

#include "adapters/result.hpp"
#include "engine/readings/reading.hpp"

namespace floatwright {

[[nodiscard]] bool is_ea_hydrology(std::string_view bytes);
[[nodiscard]] Result<GaugeAnswer> read_ea_hydrology(std::string_view bytes, const std::string& where);

}  // namespace floatwright
