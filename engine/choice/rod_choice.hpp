#pragma once
// The rods that a boat may choose from, each with what it could carry, and how many of them go aboard.
#include <vector>

#include "engine/choice/rod_load.hpp"

namespace floatwright {

struct RodChoice {
  std::vector<RodLoads> rods;      // without those that are for other boats
  std::vector<std::size_t> alike;  // by rods: the first one that brings the same in all it can carry, or itself
  std::size_t aboard = 0;          // at most rods.size()
};

// What a rod brings is measured against the best of the whole rack, the rods for other boats included, so that one boat's
// worth can be held against another's. Where the sets of rods would have more than 1,728 states, the loads that are best
// for the fewest minutes are left out.
[[nodiscard]] RodChoice rod_choice(const std::vector<WaterMinutes>& waters, const Tackle& tackle,
                                   const Preferences& preferences, const Judgement& judgement);

}  // namespace floatwright
