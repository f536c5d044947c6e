#pragma once
// What a reach's waters are known to be: the notes as written, brought to the reach's own flow; or, where nobody
// described it, what its channel is likely to hold.
#include <vector>

#include "engine/river/graph.hpp"
#include "engine/water/channel.hpp"

namespace floatwright {

// How what a person sees stands to the channel's mean: a lane that is fished is deeper (judgement), the water slower in
// the mean over its depth than at its surface (0.84 to 0.90: Rantz and others 1982, USGS WSP 2175, from memory).
inline constexpr double kLaneOverMeanDepth = 1.4;
inline constexpr double kMeanOverSurface = 0.85;

// A person notes the flow of the whole river. In a side channel, and in the stem beside one, only a part of it runs by:
// the same water with each note's flow turned into the flow of this reach. Give this to `lane`, not the water as typed.
[[nodiscard]] Water water_in(const River& river, const Reach& reach, const Water& typed);

// The one water of a reach nobody described, marked as a guess: by Froude number a pool under 0.18, a riffle over 0.41,
// else a run (Jowett 1993, from memory); lane depth 1.4 times the channel's mean (riffle 1.0), its mean speed 1.0 times
// the channel's, both judgement; surface speed is mean/0.85.
[[nodiscard]] Water likely_water(const Channel& channel, Discharge flow);

}  // namespace floatwright
