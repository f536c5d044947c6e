#pragma once
// OGC WaterML 2.0 Part 1, time series of measurements, whoever serves it: a Collection of observations, or a
// MeasurementTimeseries alone. What the default of all points says holds where the point itself says nothing. Points
// without a value, or with an empty, nil or NaN one, are missing; a point without a time is none.
#include <string>
#include <string_view>

#include "adapters/result.hpp"
#include "engine/readings/reading.hpp"

namespace floatwright {

[[nodiscard]] bool is_waterml2(std::string_view bytes);
[[nodiscard]] Result<GaugeAnswer> read_waterml2(std::string_view bytes, const std::string& where);

}  // namespace floatwright
