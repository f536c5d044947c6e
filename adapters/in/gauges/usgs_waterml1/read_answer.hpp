#pragma once
// USGS instantaneous and daily values as WaterML 1.1 XML, what the older service sends where no format is asked for.
// One entry per station, parameter and statistic, each with one block of values per method, that is, per sensor. The
// missing code is read from the answer, the offset is on each value; values of days have none.
#include <string>
#include <string_view>

#include "adapters/result.hpp"
#include "engine/readings/reading.hpp"

namespace floatwright {

[[nodiscard]] bool is_usgs_waterml1(std::string_view bytes);
[[nodiscard]] Result<GaugeAnswer> read_usgs_waterml1(std::string_view bytes, const std::string& where);

}  // namespace floatwright
