#pragma once
// How long a change of flow takes through a reach. In order of trust: a typed wave time, the lag of two gauges that
// `tune` fitted, the celerity of the channel. t(Q) = t0 (Q0/Q)^m, m 0.34 (velocity exponent, Leopold & Maddock 1953)
// unless fitted, spread over the reaches by length. A lag across a dam or a lake counts for nothing.
#include <algorithm>

#include "engine/river/graph.hpp"
#include "engine/routing/muskingum.hpp"

namespace floatwright {

inline constexpr double kWaveExponent = 0.34;

// Between which shares of its expected travel a front is told to arrive, and a quarter of an hour either side at the
// least. Judgement; held on one river's record (docs/accuracy.md).
inline constexpr Duration kLeastMargin = Duration::from_si(900.0);
struct FrontMargin {
  double earliest = 1.0, latest = 1.0;

  [[nodiscard]] Duration first(Duration expected) const {
    return std::min(earliest * expected, expected - kLeastMargin);
  }
};
// Of the last, a third and more of the rises of two stretches in three came before 0.8 times what was expected.
inline constexpr FrontMargin kTimedMargin{0.85, 1.2}, kChannelMargin{0.8, 1.6}, kGuessedMargin{0.5, 1.6};

struct ReachWave {
  WavePath path;
  double timed = 0.0;    // share of the reach that a typed wave time or a fitted lag covers, 0 to 1
  bool guessed = false;  // the rest by a channel that nobody measured or described
};

// `here` is the flow in the reach, `at_top` that where the wave sets out: wave times and lags are known for the latter.
// A lake passes a wave at once unless a wave time was typed across it.
[[nodiscard]] ReachWave reach_wave(const River& river, const Reach& reach, Discharge here, Discharge at_top);

// The same for the part of a reach between its upper end and `place`.
[[nodiscard]] ReachWave reach_wave_to(const River& river, const Reach& reach, RiverPlace place, Discharge here,
                                      Discharge at_top);

// Down the stem from one place to another, at one flow all the way; no length where the second is not below the first.
[[nodiscard]] WavePath wave_between(const River& river, const RiverGraph& graph, RiverPlace from, RiverPlace to,
                                    Discharge flow);

// One after the other.
[[nodiscard]] WavePath joined(const WavePath& upper, const WavePath& lower);

// t0 (Q0/Q)^m; flows under 10 l/s count as that.
[[nodiscard]] Duration travel_at(Discharge flow, Duration time, Discharge at_flow, double exponent);

// A dam or a lake from `upper` down to `lower` makes a wave of its own. A dam at `upper` itself is above.
[[nodiscard]] bool wave_ends_between(const River& river, RiverPlace upper, RiverPlace lower);

}  // namespace floatwright
