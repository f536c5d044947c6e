#pragma once
// The answer to an exact case in words, with plain SI numbers: the case is exact, so there is no band.
#include "engine/sinking/simulated_cast.hpp"
#include "engine/sinking/steady.hpp"
#include "engine/wording/page.hpp"

namespace floatwright {

[[nodiscard]] Page steady_page(const SteadyCase& asked, const SteadyShape& shape);
[[nodiscard]] Page cast_page(const CastCase& asked, const SimulatedCast& cast);

}  // namespace floatwright
