#pragma once
// Seconds that a cast costs before the fly fishes: the cast itself, the mends, gathering a sinking line, and a strip's
// count (which is paid although the line sinks meanwhile).
#include "engine/choice/judgement.hpp"
#include "engine/sinking/cast_path.hpp"

namespace floatwright {

[[nodiscard]] Duration cast_time(LineKind kind, const SinkingPart& sinking, const Technique& technique, Length cast,
                                 const TimesJudgement& judgement);

}  // namespace floatwright
