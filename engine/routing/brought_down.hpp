#pragma once
// The flow of a gauge brought down to the next one, its travel depending on the flow: the kinematic wave through a
// reach whose travel time is t(Q) = t0 (Q0/Q)^m, solved exactly for steps of constant flow by its cumulated volume,
// V_out(t) = max over tau of V_in(t - tau) - m/(1-m) q(tau) tau with t(q) = tau (Hopf-Lax formula; Lighthill & Whitham
// 1955, Newell 1993; from memory). Rises steepen, falls draw out, and no water is lost. Then spread by a linear
// reservoir, whose delay the wave is spared.
#include "engine/forecast/from_above.hpp"
#include "engine/river/graph.hpp"

namespace floatwright {

struct WaveTravel {
  Discharge at_flow;
  Duration time;          // t0, of a change at that flow
  double exponent = 0.0;  // m, 0 to 0.9; under 0.02 the lag is constant
  Duration spread;        // standard deviation of the arrival of what set out at once
};

// Even steps of flow, each held for a step around its instant, brought down: the same steps, starting at the same
// instant. Before the first step the flow was steady. Flows over `fastest` travel no faster than that.
[[nodiscard]] std::vector<Discharge> brought_down(const std::vector<Discharge>& above, Period step,
                                                  const WaveTravel& travel, Discharge fastest);
// Step i of what is brought down depends on nothing above after step i - this.
[[nodiscard]] std::size_t steps_known_ahead(Period step, const WaveTravel& travel, Discharge fastest);

// From one place down to another at a flow, and how it changes with the flow; no time where there is no way down.
[[nodiscard]] WaveTravel travel_between(const River& river, const RiverGraph& graph, RiverPlace from, RiverPlace to,
                                        Discharge flow);

// From one gauge to another by typed wave times, tuned lags and channels, as they are in the river file (wave_travel).
// Each run of the record between gaps by itself, beginning once its own first water is through. Nothing where a gauge
// is not on the stem, the first is not above the second, or a dam or a lake lies between: those make a wave of their
// own.
[[nodiscard]] FromAbove from_above(const River& river, const RiverGraph& graph, std::size_t upper_gauge,
                                   std::size_t lower_gauge, const Series<Discharge>& upper_record);

}  // namespace floatwright
