#pragma once
// The printed band of the fly's depth while it fishes: the three flow cases and the line's own band, joined in logs as
// sqrt(hw_flow^2 + hw_line^2) on each side, never better than 0.1 m either way, never deeper than the water.
// The line's band: a tight swing or an uncounted strip -25/+30 %, mended or counted -35/+40 %; a nymph on its leader
// 10 % (one standard deviation) and never deeper than the leader; a dry fly is on the surface and has none.
#include "engine/choice/judgement.hpp"
#include "engine/sinking/cast_path.hpp"
#include "engine/units/band.hpp"
#include "engine/units/per_case.hpp"

namespace floatwright {

struct FlyDepthCases {
  PerCase<Length> fly;      // by flow case
  PerCase<Length> water;    // likewise
  Length indicator_to_fly;  // indicator only
};

[[nodiscard]] Band<Length> fly_depth_band(const FlyDepthCases& cases, const Technique& technique,
                                          const Judgement& judgement);

}  // namespace floatwright
