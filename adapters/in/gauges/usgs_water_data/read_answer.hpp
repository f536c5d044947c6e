#pragma once
// USGS Water Data, OGC API Features, versions 0 and 1: the GeoJSON of the collections continuous, latest-continuous,
// daily and latest-daily. Features come unsorted, several series interleaved; values are strings, null is missing; the
// identity of a row is its time series and its time.
#include <string>
#include <string_view>

#include "adapters/result.hpp"
#include "engine/readings/reading.hpp"

namespace floatwright {

[[nodiscard]] bool is_usgs_water_data(std::string_view bytes);
// Of one page; GaugeAnswer::next where it is not the last.
[[nodiscard]] Result<GaugeAnswer> read_usgs_water_data(std::string_view bytes, const std::string& where);

}  // namespace floatwright
