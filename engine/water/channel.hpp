#pragma once
// The channel: width, mean depth and mean speed of the whole section as power laws of discharge, for celerity, travel
// time and heat. In order of trust: a measurement with the published mean exponents, the guide's own note, a regional
// estimate marked as a guess. Exponents b 0.26, f 0.40, m 0.34: Leopold & Maddock 1953 (USGS Professional Paper 252).
#include "engine/river/graph.hpp"
#include "engine/units/unit.hpp"

namespace floatwright {

struct Channel {
  // w = a Q^b, d = c Q^f, v = k Q^m with b+f+m = 1 and a c k = 1 (SI: Q in m3/s, w and d in m, v in m/s)
  double a = 1.0, b = 0.26, c = 1.0, f = 0.40, k = 1.0, m = 0.34;
  bool guessed = false;
};

[[nodiscard]] Length width(const Channel& channel, Discharge q);
[[nodiscard]] Length mean_depth(const Channel& channel, Discharge q);
[[nodiscard]] MeanSpeed mean_speed(const Channel& channel, Discharge q);
// c = dQ/dA = V/(1-m)
[[nodiscard]] Speed celerity(const Channel& channel, Discharge q);

// The power laws through one measured (Q, width, depth, speed); the three need not multiply to Q: they are scaled to.
[[nodiscard]] Channel channel_through(const ChannelMeasurement& measured);

// The channel of a reach: its own measurement, else from the notes on its waters, else by drainage area, else a guess
// from flow alone (marked).
[[nodiscard]] Channel channel_of(const River& river, const Reach& reach, Discharge typical_flow);

}  // namespace floatwright
