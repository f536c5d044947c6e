#pragma once
// Real-time hydrometry of Hub'Eau, version 2 (France): rows of stage (H, mm) and discharge (Q, l/s) with the instant in
// UTC, a status and a qualification. Rows of a site without a station repeat those of its station and are left out.
#include <string>
#include <string_view>

#include "adapters/result.hpp"
#include "engine/readings/reading.hpp"

namespace floatwright {

[[nodiscard]] bool is_hubeau(std::string_view bytes);
[[nodiscard]] Result<GaugeAnswer> read_hubeau(std::string_view bytes, const std::string& where);

}  // namespace floatwright
