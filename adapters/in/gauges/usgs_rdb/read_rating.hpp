#pragma once
// A rating of USGS as RDB: the base table (its defining points, to be interpolated as it says) or the expanded,
// shift-adjusted one ("exsa", a row every 0.01 ft). Both are provisional.
#include <string>
#include <string_view>

#include "adapters/result.hpp"
#include "engine/readings/rating.hpp"

namespace floatwright {

[[nodiscard]] Result<Rating> read_usgs_rdb_rating(std::string_view bytes, const std::string& where);

}  // namespace floatwright
