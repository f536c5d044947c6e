#pragma once
// Two drifts whose line the angler leads: a weighted fly on a tight line under the rod, and a dry fly on the surface.
// In closed form; every constant is judgement.
#include "engine/sinking/cast_path.hpp"

namespace floatwright {

// y = min(V t, h - 0.10 m); the fly's path past the rod is 5 m on a thin line or mono rig, 3 m on any other, which
// sags.
[[nodiscard]] Measured<CastPath> tight_line_cast(const Tackle& tackle, const Rig& rig, const CastSetting& setting);
// On the surface until it drags, and no longer than the limits let it; from a standing boat until it has drifted past.
[[nodiscard]] CastPath dry_cast(const Tackle& tackle, const Rig& rig, const Technique& technique,
                                const CastSetting& setting);

}  // namespace floatwright
