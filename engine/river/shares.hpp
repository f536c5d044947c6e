#pragma once
// How the flow divides beside a side channel.
#include "engine/river/graph.hpp"

namespace floatwright {

// The part of the whole flow that takes the side channel: linear between the typed flows, flat beyond, 0 when none is
// typed.
[[nodiscard]] double side_share(const SideChannel& side, Discharge whole_flow);

inline constexpr double kLeastOfTheStem = 0.02;  // what the stem keeps, so that no typed share dries it

// The part of the whole flow that runs down this reach: 1, but in a side channel and in the stem beside one.
[[nodiscard]] double own_share(const River& river, const Reach& reach, Discharge whole_flow);
[[nodiscard]] inline Discharge own_flow(const River& river, const Reach& reach, Discharge whole_flow) {
  return whole_flow * own_share(river, reach, whole_flow);
}

}  // namespace floatwright
