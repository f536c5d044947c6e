#pragma once
// The five lines of the morning mail that a phone shows before a thumb moves: rig, flow, water, changes, care. What is not
// known is said to be unknown.
#include <string>
#include <vector>

#include "engine/wording/float_plan_parts.hpp"

namespace floatwright {

[[nodiscard]] std::vector<std::string> phone_lines(const Told& told);  // of a day with a float

}  // namespace floatwright
