#pragma once
// A list of USGS stations as RDB ("site" service): name, place, altitude, and where the list has them drainage area and
// zone.
#include <string>
#include <string_view>
#include <vector>

#include "adapters/result.hpp"
#include "engine/readings/station_about.hpp"

namespace floatwright {

[[nodiscard]] Result<std::vector<StationAbout>> read_usgs_rdb_stations(std::string_view bytes,
                                                                       const std::string& where);

}  // namespace floatwright
