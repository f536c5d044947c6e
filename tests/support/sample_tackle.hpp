#pragma once
// An invented rack of rods, by index: lines 0 sinking tip 5 in/s, 1 its spare 4 in/s, 2 nymph taper, 3 double taper, 4
// a density compensated tip, 5 a looped head; tip 0 for it; flies 0 and 1 streamers, 2 a nymph, 3 a dry.
#include "engine/tackle/tackle.hpp"

namespace floatwright::testing {

[[nodiscard]] Tackle sample_tackle();

}  // namespace floatwright::testing
