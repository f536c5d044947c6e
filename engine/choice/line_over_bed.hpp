#pragma once
// What a picture of a line over the bed shows: the water, where the fish take, and the line as it fishes there, all of
// the middle case and as it was scored.
#include "engine/choice/choose.hpp"
#include "engine/sinking/line_shape.hpp"

namespace floatwright {

struct LineOverBed {
  ScoredRig rig;
  Length water;       // its depth
  Length zone_depth;  // every fish that holds there takes a fly between this depth and the bed
  LineShape shape;
};

// Absent for a way of fishing that has no shape to solve.
[[nodiscard]] Measured<LineOverBed> line_over_bed(const WaterToFish& water, const ScoredRig& rig, const Tackle& tackle,
                                                  const Preferences& preferences, const Judgement& judgement);

}  // namespace floatwright
