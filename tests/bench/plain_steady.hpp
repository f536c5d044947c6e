#pragma once
// A steady shape solved plainly, to measure the solver against: in time, with 16, 32 and 64 steps in leader, sinking
// part and floating body, and in depth, with twenty times as many. Nothing of it is the solver's own: Kutta's
// fourth-order steps, the laws of drag and profile with their powers worked out at every step, the fly's depth by false
// position. Only where even steps would swing about the line's angle are they cut.
#include <optional>

#include "engine/sinking/steady.hpp"

namespace floatwright::plain {

struct Steady {
  double fly_depth, tip_depth, butt_depth;  // m, not held to surface or bed
  double end_angle;                         // rad below the horizontal
  double tension;                           // N
};

// `times`: how many times the 16, 32 and 64 steps. None where no depth of the fly brings the end to the surface.
[[nodiscard]] std::optional<Steady> steady(const SteadyCase& in, int times = 1);

// How far below the surface the upper end comes out over a fly at this depth, m: 0 at an answer.
[[nodiscard]] double end_depth(const SteadyCase& in, double fly_depth, int times = 1);

}  // namespace floatwright::plain
