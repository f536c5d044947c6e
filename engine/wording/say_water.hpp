#pragma once
// The trade's words for waters, beds and where a depth comes from.
#include <string>

#include "engine/river/river.hpp"

namespace floatwright {

[[nodiscard]] std::string say(WaterType type);      // "run"
[[nodiscard]] std::string say(DepthSource source);  // "noted"

}  // namespace floatwright
