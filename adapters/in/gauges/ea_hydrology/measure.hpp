#pragma once
// What the name of a measure of the hydrology service tells: "3c5cba29-2321-4289-a1fd-c355e135f4cb-flow-m-86400-m3s-
// qualified" is station, parameter, kind of value (i instant, m mean, min, max), period in seconds, unit, type.
#include <optional>
#include <string_view>

#include "adapters/in/gauges/ea_streams.hpp"

namespace floatwright {

// None: the name is built otherwise.
[[nodiscard]] std::optional<EaMeasure> ea_hydrology_measure(std::string_view name);

}  // namespace floatwright
