#pragma once
// What of a steady case can't be: a sentence for a person, or none. The limits stand far outside any water and any
// line; within them every case has a finite answer or none, and in bounded time.
#include <string>

#include "engine/sinking/steady.hpp"

namespace floatwright {

// Empty where there is none.
[[nodiscard]] std::string fault_of(const SteadyCase& in);

}  // namespace floatwright
