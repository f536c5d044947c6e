#pragma once
// How fast a boat drifts down a reach: by the guide's float time scaled by V(Q)/V(Q0) of the channel; else 1.25 times the
// water's own (travelling_water.hpp; the fast thread, judgement); across still water a rower's 1 m/s, and never under 0.1 m/s, for
// then nobody waits for the river (both judgement).
#include "engine/water/channel.hpp"

namespace floatwright {

// `pace`: of this boat over that, 1 where nothing is known of it; rowing has none. `flow` is the reach's own; none: as it was noted, or what a
// channel is likely to have.
[[nodiscard]] Speed floating_speed(const River& river, const Reach& reach, std::optional<Discharge> flow, double pace = 1.0);

}  // namespace floatwright
