#pragma once
// What a lake's temperature profile says to somebody who fishes it: the layer, or why there is none and what the profile
// shows instead, and the cautions of its water.
#include <string>
#include <vector>

#include "engine/choice/lake_layer.hpp"
#include "engine/trip/heat.hpp"

namespace floatwright {

// A lake of river.json.
struct LakeAsked {
  Lake lake;
  Measured<Layer> layer;
  HeatLimits heat{};
};

[[nodiscard]] std::string lake_words(const LakeAsked& asked, UnitSystem units);

// Warm, cold and freezing water at the top, where boats and hooked fish come; a profile that is not there.
[[nodiscard]] std::vector<std::string> lake_cautions(const LakeAsked& asked, UnitSystem units);

}  // namespace floatwright
