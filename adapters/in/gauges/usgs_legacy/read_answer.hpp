#pragma once
// USGS instantaneous and daily values of the older service (WaterML 1.1 written as JSON). One entry per station,
// parameter and statistic, each with one block of values per method, that is, per sensor; a block may be empty. Values
// are strings, the missing code is read from the answer, the offset is on each row.
#include <string>
#include <string_view>

#include "adapters/result.hpp"
#include "engine/readings/reading.hpp"

namespace floatwright {

[[nodiscard]] bool is_usgs_legacy(std::string_view bytes);
[[nodiscard]] Result<GaugeAnswer> read_usgs_legacy(std::string_view bytes, const std::string& where);

}  // namespace floatwright
