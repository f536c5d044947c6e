#pragma once
// The tables hold one profile (kTableProfile). In water of another a line lies much as it does in theirs at the surface
// speed at which the water goes past it as fast: the root of the mean square over the depths down to which it lies,
// weighted by depth, since what sinks hangs in the lower part. Own; the weight by trial on 180 casts of nine rigs at paces
// 0 to 1.5, where it leaves a third of the fly's miss in depth.
#include "engine/water/profile.hpp"

namespace floatwright {

// `pace`: the boat's speed over the surface speed; `lies`: how deep fly or tip lies in the tables, mean over a cast.
[[nodiscard]] SurfaceSpeed like_speed(SurfaceSpeed surface, const Profile& profile, Length depth, double pace,
                                      Length lies);

}  // namespace floatwright
