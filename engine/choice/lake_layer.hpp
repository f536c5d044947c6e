#pragma once
// The layer of a lake to fish, from its temperature profile: water of 10 to 16 C, not below the steepest drop (of 1 C a
// metre or more) and above the weed. Judgement; without a profile no layer is made up.
#include <optional>

#include "engine/river/river.hpp"
#include "engine/units/measured.hpp"

namespace floatwright {

inline constexpr Temperature kLayersCoolest = celsius(10.0), kLayersWarmest = celsius(16.0);

struct Layer {
  Length from, to;  // depths
};

// Absent with the reason: no profile, or no water of that warmth above the drop and the weed.
[[nodiscard]] Measured<Layer> layer_to_fish(const Lake& lake);

}  // namespace floatwright
