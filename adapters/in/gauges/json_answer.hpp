#pragma once
// What the readers of JSON answers share beside the rows.
#include <optional>
#include <string>
#include <string_view>

#include "adapters/in/gauges/json_rows.hpp"
#include "engine/readings/reading.hpp"

namespace floatwright {

// Why there is no list of readings at `pointer`: the service's own error where it answered with one. None: there is
// one.
[[nodiscard]] std::optional<Failure> why_no_list(const JsonValue& list, std::string_view pointer,
                                                 std::string_view bytes, const std::string& where);

// A series without readings.
[[nodiscard]] GaugeSeries series_head(std::string station, std::string series_id, Variable variable,
                                      const std::string& where);

}  // namespace floatwright
