#pragma once
// A place on the river and a distance along it, as the owner of the file counts them: "mile 40.2", "km 12.35", "1.6
// mi".
#include <string>

#include "engine/river/river.hpp"

namespace floatwright {

[[nodiscard]] std::string place_number(const River& river, RiverPlace place);  // "40.2", "38.0", "12.345"
[[nodiscard]] std::string place_text(const River& river, RiverPlace place);    // "mile 40.2"
[[nodiscard]] std::string distance_text(const River& river, Length distance);  // "1.6 mi", one decimal

}  // namespace floatwright
