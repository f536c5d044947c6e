#pragma once
// How long a line drifts before it drags, by what can be mended: t_free = (1 + mends) 1.5 m / du, with
// du = (0.25 hold + 0.10 (1 - hold)) U the speed at which line and fly part. A full sinking line cannot be mended.
#include "engine/choice/judgement.hpp"
#include "engine/sinking/cast_path.hpp"

namespace floatwright {

// 0 drifting, 0.35 held, 1 anchored or wading: the share of the stream's speed that the boat does not go along with.
[[nodiscard]] double hold(Platform platform, const BoatJudgement& judgement);

[[nodiscard]] double mends(LineKind kind, const MendsJudgement& judgement);

[[nodiscard]] Duration free_drift(double mends, Platform platform, SurfaceSpeed speed, const Judgement& judgement);

// The longest that a cast may fish, from landing (strip: from the end of the count); `passing` is the speed over the
// ground of what drifts past a boat that does not: the indicator's, the surface's for a dry fly.
struct Drift {
  Method method = Method::Swing;
  LineKind kind = LineKind::Floating;
  Platform platform = Platform::Drifting;
  SurfaceSpeed surface_speed;
  Speed passing;
  Length cast;
};
[[nodiscard]] Duration longest_fishing(const Drift& drift, const Judgement& judgement);

}  // namespace floatwright
