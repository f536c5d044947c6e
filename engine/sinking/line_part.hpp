#pragma once
// What hangs in the water: the parts of a line and the fly at its end, with the weights and drag areas that their sink
// rates imply (force balance). That a fly weighs 0.6 in water of what it weighs in air is judgement.
#include <optional>

#include "engine/sinking/section.hpp"

namespace floatwright {

enum class PartKind { Leader, Sinking, Floating };

// One part of the line, from the fly up. Give `sink_rate_*` (still water) or `density`; the rate wins.
struct LinePart {
  PartKind kind = PartKind::Leader;
  Length length, diameter;
  Density density;
  std::optional<Speed> sink_rate_butt, sink_rate_end;
};

// Weight in water per length at the lower and the upper end of a part; below 0 where it floats.
struct EndWeights {
  ForcePerLength low, high;
};
[[nodiscard]] EndWeights end_weights(const LinePart& part, const WaterProperties& water);

struct TowedFly {
  Force weight_in_water;
  Speed sink_rate;       // alone in still water, vertical
  Area towed_drag_area;  // CdA when towed: a quarter of what the sink rate implies unless given
};

inline constexpr double kFlyInWater = 0.6;  // weight in water over weight

// CdA at which a weight sinks at a rate above 0: W = 1/2 rho CdA Vs^2.
[[nodiscard]] Area sinking_drag_area(Force weight_in_water, Speed rate, Density water);

}  // namespace floatwright
