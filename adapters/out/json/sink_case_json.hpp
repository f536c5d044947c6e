#pragma once
// The answer to an exact case of `sink --case`: plain numbers in SI with the unit in the key, no bands. What is no
// number (an error of ours) is null.
#include <string>

#include "engine/sinking/simulated_cast.hpp"
#include "engine/sinking/steady.hpp"

namespace floatwright {

[[nodiscard]] std::string steady_json(const SteadyShape& shape);

// A row every 0.1 s; depths at 2, 4 and 6 s by their second, null where the cast was over before.
[[nodiscard]] std::string cast_json(const SimulatedCast& cast);

}  // namespace floatwright
