#pragma once
// A fly drifting under an indicator: the leader's shape is the balance of weight and drag on each of ten pieces, and
// the whole goes at the speed at which it has no net drag (the indicator's own left out). Limits and times are
// judgement.
#include <optional>

#include "engine/sinking/cast_path.hpp"
#include "engine/sinking/rigged_line.hpp"

namespace floatwright {

[[nodiscard]] IndicatorDrift indicator_drift(Length leader, const HungWeight& hung, const CastWater& water);

// Depths of the leader's joints as it drifts so, evenly from the fly up to the indicator.
[[nodiscard]] std::vector<Length> indicator_joints(Length leader, const HungWeight& hung, const TabledWater& water);

// The leader that hangs the fly 0.10 m over the bed, rounded down to half a foot; at most 1.5 depths, and rod + 1 m.
[[nodiscard]] Length indicator_leader(const HungWeight& hung, const CastWater& water, Length rod);

[[nodiscard]] Measured<CastPath> indicator_cast(const Tackle& tackle, const Rig& rig, const Technique& technique,
                                                const CastSetting& setting);

}  // namespace floatwright
