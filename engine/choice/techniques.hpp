#pragma once
// Which ways a line can be fished from a platform, and how fast the boat goes along. Common practice, no source: a
// swing needs a fixed rod, a led line one that does not drift freely; a full sinking line is only swung tight; a looped
// tip's joint stays outside the guides, so it is not stripped; a boat that outruns the water kills a strip.
#include <vector>

#include "engine/choice/angler.hpp"
#include "engine/choice/judgement.hpp"
#include "engine/sinking/cast_path.hpp"

namespace floatwright {

[[nodiscard]] constexpr bool stands(Platform platform) { return platform == Platform::Anchored || platform == Platform::Wading; }

// v_boat = (1 - hold) x the speed of the thread the boat is in, at most twice the speed of the water fished.
[[nodiscard]] Speed boat_speed(Platform platform, SurfaceSpeed boat_lane, SurfaceSpeed fished,
                               const Judgement& judgement);

// `pace` is k, boat speed over surface speed of the water fished, in the middle case.
[[nodiscard]] std::vector<Technique> techniques(Method method, LineKind kind, Platform platform, double pace,
                                                const Judgement& judgement);

// Rod tip to fly: what the angler casts, less where the line will not carry so far.
[[nodiscard]] Length cast_length(LineKind kind, Length angler, const TechniquesJudgement& judgement);
// The advice must hold for whoever casts shortest.
[[nodiscard]] Length cast_length(LineKind kind, const Preferences& people, const TechniquesJudgement& judgement);

}  // namespace floatwright
