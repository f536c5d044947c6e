#pragma once
// How long a change of flow takes through a reach. A typed wave time always wins over the celerity of the channel:
// t(Q) = t0 (Q0/Q)^0.34, spread over the reaches by length (0.34: velocity exponent, Leopold & Maddock 1953).
#include "engine/river/graph.hpp"
#include "engine/routing/muskingum.hpp"

namespace floatwright {

struct ReachWave {
  WavePath path;
  double typed = 0.0;  // share of the reach that a typed wave time covers, 0 to 1
};

// `here` is the flow in the reach, `at_top` that where the wave sets out: a wave time is typed for the latter.
// A lake passes a wave at once unless a wave time was typed across it.
[[nodiscard]] ReachWave reach_wave(const River& river, const Reach& reach, Discharge here, Discharge at_top);

// The same for the part of a reach between its upper end and `place`.
[[nodiscard]] ReachWave reach_wave_to(const River& river, const Reach& reach, RiverPlace place, Discharge here,
                                      Discharge at_top);

}  // namespace floatwright
