#pragma once
// What a day is about: the line fished longest, of its rigs the one fished longest, and of the waters fished with that the
// one with the most minutes. A mail's subject speaks of this one.
#include <optional>

#include "engine/trip/day_plan.hpp"

namespace floatwright {

struct MostFished {
  const PlannedReach* reach = nullptr;  // both stand in the stretch that was asked
  const PlannedWater* water = nullptr;  // its choice has a best
};

// None where no rig fishes anywhere.
[[nodiscard]] std::optional<MostFished> most_fished(const PlannedStretch& stretch);

}  // namespace floatwright
