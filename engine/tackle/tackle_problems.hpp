#pragma once
// What in tackle.json cannot be, all at once, with pointers into it: a line on a rod that isn't there, a code that does
// not read, a tip without a sink rate, two ids alike, no fly for a method that is fished.
#include <set>

#include "engine/tackle/tackle.hpp"
#include "engine/units/problem.hpp"

namespace floatwright {

// `fished`: the methods of settings.json, where they are known.
[[nodiscard]] Problems tackle_problems(const Tackle& tackle,
                                       const std::set<Method>& fished = {Method::Swing, Method::Strip, Method::Indicator,
                                                                         Method::TightLine, Method::Dry});

}  // namespace floatwright
