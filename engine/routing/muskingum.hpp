#pragma once
// Muskingum routing of one reach: O2 = C0 I2 + C1 I1 + C2 O1, with C0 + C1 + C2 = 1, so mass is exact to round-off.
// Coefficients from storage constant K and weight X (McCarthy), or from Courant number and cell Reynolds number
// (Cunge 1969; Ponce, Engineering Hydrology). All three are non-negative exactly when |C - 1| <= D <= 1 + C.
#include <cstddef>
#include <vector>

#include "engine/units/unit.hpp"

namespace floatwright {

struct MuskingumWeights {
  double inflow_now = 0.0, inflow_before = 0.0, outflow_before = 0.0;  // C0, C1, C2
};

// May be negative where dt is long against 2 K (1 - X) or short against 2 K X; K (1 - X) + dt/2 is over zero.
[[nodiscard]] MuskingumWeights muskingum_weights(Duration k, double x, Duration dt);

// courant C = c dt/dx, diffusion D = Q/(B S c dx). D outside |C - 1| to 1 + C is moved to that edge: a little more or
// less damping, never a negative flow.
[[nodiscard]] MuskingumWeights muskingum_cunge_weights(double courant, double diffusion);

[[nodiscard]] std::vector<Discharge> routed(std::vector<Discharge> inflow, MuskingumWeights weights,
                                            Discharge first_outflow);

// How a change of flow goes through a piece of river.
struct WavePath {
  Length length;
  Duration travel;  // of the wave, L/c
  Length spread;    // Q/(B S c): the length over which D is 1
};

struct RoutingCut {
  std::size_t pieces = 0;    // none: what enters leaves
  MuskingumWeights weights;  // of each piece
};
// Cut into equal pieces with C nearest to 1, fewer while D is over 2. No pieces without travel time: the flow passes
// unchanged.
[[nodiscard]] RoutingCut routing_cut(const WavePath& path, Duration dt);

// A lake as one linear reservoir (X = 0, D = 1) that holds the water of `travel`: outflow follows storage.
[[nodiscard]] RoutingCut reservoir_cut(Duration travel, Duration dt);

// Through all pieces, from a steady state at the first inflow.
[[nodiscard]] std::vector<Discharge> routed(std::vector<Discharge> inflow, const WavePath& path, Duration dt);

}  // namespace floatwright
