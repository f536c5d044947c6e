#pragma once
// Readings of the Environment Agency's real-time flood-monitoring service: a list of items, each an instant (UTC all
// year), a value and the address of its measure, whose name tells station, quantity and unit. Several measures of one
// quantity stand side by side; a value may be missing.
#include <string>
#include <string_view>

#include "adapters/result.hpp"
#include "engine/readings/reading.hpp"

namespace floatwright {

[[nodiscard]] bool is_ea_flood(std::string_view bytes);
[[nodiscard]] Result<GaugeAnswer> read_ea_flood(std::string_view bytes, const std::string& where);

}  // namespace floatwright
