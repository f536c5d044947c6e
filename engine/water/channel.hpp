#pragma once
// The channel: width, mean depth and mean speed of the whole section as power laws of discharge, for celerity, travel
// time and heat, from whatever is known best of the reach (channel_of). Exponents b 0.26, f 0.40, m 0.34: Leopold &
// Maddock 1953 (USGS Professional Paper 252).
// A flow under 1 l/s counts as 1 l/s, so that a dry reach has no infinite travel time.
#include <optional>
#include <span>
#include <vector>

#include "engine/river/graph.hpp"
#include "engine/units/unit.hpp"

namespace floatwright {

struct Channel {
  // w = a Q^b, d = c Q^f, v = k Q^m with b+f+m = 1 and a c k = 1 (SI: Q in m3/s, w and d in m, v in m/s)
  double a = 1.0, b = 0.26, c = 1.0, f = 0.40, k = 1.0, m = 0.34;
  bool guessed = false;
  Discharge least, most;  // the flows between which it was measured or surveyed; both 0: not known
};

[[nodiscard]] Length width(const Channel& channel, Discharge q);
[[nodiscard]] Length mean_depth(const Channel& channel, Discharge q);
[[nodiscard]] MeanSpeed mean_speed(const Channel& channel, Discharge q);
// c = dQ/dA = V/(1-m), from V to 3 V
[[nodiscard]] Speed celerity(const Channel& channel, Discharge q);

// A measured width, mean depth and mean speed need not multiply to its discharge: each is scaled alike until they do.
// Flow, width, depth and speed are over 0.
[[nodiscard]] ChannelMeasurement closed(const ChannelMeasurement& measured);
// The power laws through one measurement, with the published exponents; or, by least squares in logarithms, through
// several, their exponents drawn to the published ones as by a measurement's scatter of 0.15 (sd of ln) beside a spread
// of exponents between rivers of 0.12 (both judgement); `drawn`, the ratio of these variances, is 0 for what is exact.
// At least one.
inline constexpr double kDrawnToPublished = 1.5625;
[[nodiscard]] Channel channel_through(const ChannelMeasurement& measured);
[[nodiscard]] Channel channel_through(std::span<const ChannelMeasurement> measured, double drawn = kDrawnToPublished);

// From the guide's note: its run (else other through water; a bank or an eddy says nothing of the middle) is 1.4 times
// as deep as the channel (judgement), and the thread of the float, or 0.85 of the run's surface speed where no float
// time is noted, is 1.25 times the mean speed. Width follows from continuity. None when no through water is described.
struct Thread {  // the boat's way down over a noted float
  Speed speed;
  Discharge at_flow;
};
[[nodiscard]] std::optional<Channel> channel_from_note(const std::vector<Water>& waters, std::optional<Thread> thread);

// Bankfull W = 2.70 A^0.352 and D = 0.30 A^0.213 (m, A in km2; Bieger et al. 2015, J. Am. Water Resour. Assoc. 51:842,
// all regions of the US, from memory), run full at 1.5 m/s (judgement). A guess.
[[nodiscard]] Channel channel_from_area(Area drainage);

// Width 6.5 Q^0.5, depth 0.22 Q^0.4, speed 0.70 Q^0.1 at the river's own usual flow (m, m/s, Q in m3/s): the downstream
// exponents are Leopold & Maddock's, the coefficients judgement. A guess.
[[nodiscard]] Channel channel_from_flow(Discharge usual);

// The channel of a reach, in this order of trust: its own measurements; its own surveyed sections; the law fitted to the
// field measurements of a gauge that speaks for it (gauge_near.hpp); the notes on its waters; then, marked as guesses,
// such a gauge's law from farther off, the drainage area, the flow alone.
[[nodiscard]] Channel channel_of(const River& river, const Reach& reach, Discharge typical_flow);

}  // namespace floatwright
