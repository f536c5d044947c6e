#pragma once
// At what pace of the fly a fish takes it, 0 to 1. A swung or stripped fly must be slow over the ground or through the
// water, a drifted nymph must not drag; a dry fly drifts until its time is up (engine/sinking/drift_limits.hpp).
#include "engine/choice/judgement.hpp"
#include "engine/sinking/cast_path.hpp"

namespace floatwright {

// Speed up to which a swung or stripped fly is taken fully; temperature unknown: that of 10 C.
[[nodiscard]] Speed easy_speed(const Measured<Temperature>& temperature, const PaceJudgement& judgement);

// s of a sample; `easy` from easy_speed().
[[nodiscard]] double share_of_pace(const CastSample& sample, Method method, Speed easy, const PaceJudgement& judgement);

}  // namespace floatwright
