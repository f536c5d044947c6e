#pragma once
// The limits of a drift as a person's judgement has them.
#include "engine/choice/judgement.hpp"
#include "engine/sinking/drift_limits.hpp"

namespace floatwright {

[[nodiscard]] DriftLimits drift_limits(const Judgement& judgement);

}  // namespace floatwright
