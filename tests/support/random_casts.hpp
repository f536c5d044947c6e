#pragma once
// Casts at random over what a guide meets: swings with and without slack and feed, and strips; from a boat at any pace
// or from anchor; light and weighted flies. The same seed gives the same casts everywhere.
#include <vector>

#include "engine/sinking/cast_case.hpp"

namespace floatwright {

[[nodiscard]] std::vector<CastCase> random_casts(int count, unsigned seed);

}  // namespace floatwright
