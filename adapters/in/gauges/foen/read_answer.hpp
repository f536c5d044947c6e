#pragma once
// Hydrology of Switzerland's Federal Office for the Environment through the open gateway api.existenz.ch: a column of
// times (seconds since 1970) and one a station and parameter, "2135|flow". Read are flow (m3/s), flow_ls (l/s), height
// (m above sea level) and temperature (C); null is missing; steps are not even. The gateway is not the agency.
#include <string>
#include <string_view>

#include "adapters/result.hpp"
#include "engine/readings/reading.hpp"

namespace floatwright {

[[nodiscard]] bool is_foen(std::string_view bytes);
[[nodiscard]] Result<GaugeAnswer> read_foen(std::string_view bytes, const std::string& where);

}  // namespace floatwright
