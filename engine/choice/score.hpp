#pragma once
// One rig fished one way in one water: the casts of the three cases, and what they are worth.
#include <optional>

#include "engine/choice/choose.hpp"

namespace floatwright {

// Everything a score depends on beside the rig; refers to what the caller keeps.
struct Scene {
  const WaterToFish& water;
  const Tackle& tackle;
  const Preferences& preferences;
  const Judgement& judgement;
};

struct Way {
  Rig rig;
  Technique technique;
};

// Every way that the methods, the lines and the platforms of this water allow.
[[nodiscard]] std::vector<Way> ways(const Scene& scene, Method method);

// The cast in the middle case; absent with the reason.
[[nodiscard]] Measured<CastPath> middle_cast(const Scene& scene, const Way& way);

// The worth that a method can have here at most, however well a rig fishes.
[[nodiscard]] double most_worth(const Scene& scene, Method method);

// From the middle case alone (five scatter members), for ranking; and from all three cases.
[[nodiscard]] ScoredRig score_middle(const Scene& scene, const Way& way, const CastPath& middle);
[[nodiscard]] ScoredRig score(const Scene& scene, const Way& way, const CastPath& middle);

}  // namespace floatwright
