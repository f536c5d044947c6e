#pragma once
// How the water slows toward its bed, with what that was taken from: "Water slows toward cobble: 0.76 of its surface speed
// in the mean of the depth."
#include <string>

#include "engine/river/river.hpp"

namespace floatwright {

// Mean over surface speed, the least and the most of what is told of.
[[nodiscard]] std::string say_slowing(Bed bed, double least, double most);

}  // namespace floatwright
