#pragma once
// What of a case can't be: a sentence for a person, or none. The limits stand far outside any water and any line;
// within them every steady case has a finite answer or none, and in bounded time.
#include <string>

#include "engine/sinking/cast_case.hpp"
#include "engine/sinking/steady.hpp"

namespace floatwright {

// Empty where there is none. What hangs on a line that is cast may be of any density.
[[nodiscard]] std::string fault_of(const SteadyCase& in);
[[nodiscard]] std::string fault_of(const CastCase& in);

}  // namespace floatwright
