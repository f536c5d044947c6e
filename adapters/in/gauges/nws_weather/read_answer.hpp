#pragma once
// The forecast of a grid square of the National Weather Service: air temperature (C), precipitation (an amount over
// each interval, read as its even rate in mm/h) and wind speed. Each interval becomes a row at its start and one every
// hour in it. The answer for a point (/points/LAT,LON) has no series: it names the grid's address as the next page.
//
// The grid does not name the point that was asked for: its station is "nws:OFFICE.X.Y", and who asked knows better.
#include <string>
#include <string_view>

#include "adapters/result.hpp"
#include "engine/readings/reading.hpp"

namespace floatwright {

[[nodiscard]] bool is_nws_weather(std::string_view bytes);
[[nodiscard]] Result<GaugeAnswer> read_nws_weather(std::string_view bytes, const std::string& where);

}  // namespace floatwright
