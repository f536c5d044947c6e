#pragma once
// What somebody measured who waded a section with a meter and a tape: CSV with a row a vertical, from bank to bank. Its
// columns: date, distance (along the tape), depth, and mean_speed (or velocity) or surface_speed, of which the mean is
// kMeanOverSurface, each but the date with its unit behind it (_ft or _m, _ft_s or _m_s); station, which may be left out where
// the directory is of one gauge. Rows of one date and station are one visit; an empty date or station is that of the row
// above. A visit with a row that can't be read is left out whole: without one of its verticals its flow is another.
#include <string>
#include <string_view>

#include "adapters/in/gauges/measurement_files.hpp"

namespace floatwright {

[[nodiscard]] bool is_verticals_csv(std::string_view bytes);

// Each visit as the measurement that it makes by the midsection method. Failure 65: no column that is needed.
[[nodiscard]] Result<Measurements> read_verticals_csv(std::string_view bytes, const std::string& where);

}  // namespace floatwright
