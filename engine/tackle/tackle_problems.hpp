#pragma once
// What in tackle.json cannot be, all at once, with pointers into it: a line on a rod that isn't there, a code that does
// not read, a tip without a sink rate, two ids alike, no fly for a method.
#include "engine/tackle/tackle.hpp"
#include "engine/units/problem.hpp"

namespace floatwright {

[[nodiscard]] Problems tackle_problems(const Tackle& tackle);

}  // namespace floatwright
