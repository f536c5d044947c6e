#pragma once
// One pool of rods for the boats of a day: which rods go in which boat, so that minutes x W less minutes lost in changes
// are most over all boats (engine/choice/share_out.hpp says how far that is exact).
#include <vector>

#include "engine/choice/choose.hpp"
#include "engine/choice/share_out.hpp"

namespace floatwright {

// What one boat fishes, with all the rods of the pool scored, and how many rods it asks for.
struct PoolBoat {
  std::vector<WaterMinutes> waters;
  Preferences preferences;
};

// By boat: indices into Tackle::rods. A boat may get fewer than it asks for, or none.
[[nodiscard]] std::vector<RodNumbers> rods_of_boats(const std::vector<PoolBoat>& boats, const Tackle& tackle,
                                                    const Judgement& judgement);

}  // namespace floatwright
