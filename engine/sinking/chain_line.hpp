#pragma once
// A line cut into pieces for the chain, and where each joint of it lies when a cast lands.
#include <vector>

#include "engine/sinking/cast_case.hpp"
#include "engine/sinking/triple.hpp"
#include "engine/sinking/water_properties.hpp"

namespace floatwright {

// How finely a cast is simulated: the longest pieces of the body, the sinking part and the leader, the step, and how
// much too long a piece may be after one.
struct Resolution {
  Length body, sinking, leader;
  Duration step;
  Length stretch;
};
// For ranking rigs: fly depth within some 2 % of the fine one's (docs/accuracy.md). For answers that stand alone.
inline constexpr Resolution kCoarse{metres(0.8), metres(0.5), metres(0.4), seconds(0.04), millimetres(2.0)};
inline constexpr Resolution kFine{metres(0.2), metres(0.125), metres(0.1), seconds(0.01), millimetres(0.02)};

// SI doubles: this is the inside of a solver.
struct ChainPiece {
  double length;     // m
  double most;       // m, a piece that has been fed is cut when it is half as long again
  double diameter;   // m
  double weight;     // N/m in water, below 0 where it floats
  double mass;       // kg/m
  double displaced;  // kg/m of water; also its added mass square to itself
};
struct ChainFly {
  double mass, displaced;   // kg
  double weight;            // N in water
  double towed, broadside;  // m2, CdA drawn level through the water and sinking
};
struct ChainLine {
  std::vector<ChainPiece> pieces;  // from the fly up
  ChainFly fly;
  double tangential_drag;  // on the wetted area
  std::size_t tip;         // joint at the leader's upper end: that many pieces are leader
};

// `in` is valid (engine/sinking/simulated_cast.hpp). Weights by sink rate, else by density.
[[nodiscard]] ChainLine chain_line(const CastCase& in, const WaterProperties& water, const Resolution& resolution);
// Its joints as the cast lands, the fly's first, the rod's last.
[[nodiscard]] std::vector<Triple<double>> landed(const CastCase& in, const ChainLine& line);

}  // namespace floatwright
