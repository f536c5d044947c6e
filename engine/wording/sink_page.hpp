#pragma once
// What `sink` prints: one rig in one water on a screen; rigs side by side.
#include <string>
#include <vector>

#include "engine/choice/rig_in_water.hpp"
#include "engine/trip/settings.hpp"
#include "engine/wording/page.hpp"

namespace floatwright {

// What was asked, for the words; refers to what the caller keeps.
struct SinkAsked {
  const Tackle& tackle;
  const KnownWater& water;
  const Judgement& judgement;
  Length cast;  // as asked: a thin line throws less far
  UnitSystem units = UnitSystem::Us;
};

// The picture of the line is its figure "line".
[[nodiscard]] Page sink_page(const SinkAsked& asked, const RigInWater& fished);

// Rows in the order given. `left_out`: a sentence for each rig that cannot be fished so.
[[nodiscard]] Page rigs_page(const SinkAsked& asked, const std::vector<RigInWater>& fished,
                             const std::vector<std::string>& left_out);

// The words over the picture; its legend alone under the page's own words; what stands where it cannot be seen.
[[nodiscard]] std::string sink_picture_legend();
[[nodiscard]] std::vector<std::string> sink_picture_heading(const SinkAsked& asked, const RigInWater& fished);
[[nodiscard]] std::string sink_picture_alt(const SinkAsked& asked, const RigInWater& fished);

}  // namespace floatwright
