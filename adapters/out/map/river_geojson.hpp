#pragma once
// What is believed of the river on the day, on a map (GeoJSON, RFC 7946): a line for each reach that lies between
// accesses with coordinates, straight from place to place and so `approximate`, with its flow and temperature through the
// day; a point for each gauge, access, dam, tributary and hazard. What can't be placed has the geometry null.
#include <string>

#include "engine/river_of_day.hpp"

namespace floatwright {

[[nodiscard]] std::string river_geojson(const RiverOfDay& river, const DayInputs& in);

}  // namespace floatwright
