#pragma once
// `sink --still`: how long to count a line down in a lake, where the fly then goes through the retrieve, and the layer.
#include <optional>
#include <vector>

#include "engine/sinking/still_water.hpp"
#include "engine/trip/settings.hpp"
#include "engine/wording/lake_words.hpp"
#include "engine/wording/page.hpp"

namespace floatwright {

struct CountedRig {
  Rig rig;
  Measured<std::vector<StillCount>> counts;
  std::optional<Measured<Duration>> to_layer;  // the count to the depth asked for
};

struct StillAsked {
  const Tackle& tackle;
  StillWater water;
  Speed strip;
  std::optional<Length> layer;
  std::optional<LakeAsked> lake{};
  UnitSystem units = UnitSystem::Us;
};

[[nodiscard]] Page still_page(const StillAsked& asked, const std::vector<CountedRig>& rigs);

}  // namespace floatwright
