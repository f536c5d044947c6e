#pragma once
// What water that nobody named is called by: the place just above it that has a name.
#include <string>

#include "engine/river/river.hpp"

namespace floatwright {

// Name of the nearest access, lower end of a named reach, portage or tributary's mouth at or upstream of a place; of
// those at one place in this order, then by name. Empty where nothing lies above.
[[nodiscard]] std::string landmark_above(const River& river, RiverPlace place);

}  // namespace floatwright
