#pragma once
// How long a drift stays free of drag: mends by kind of line, and the stream's uneven pull over the line. Judgement.
#include "engine/river/river.hpp"
#include "engine/tackle/tackle.hpp"

namespace floatwright {

// How firmly a platform stays where it is: 0 goes with the stream, 1 stands.
[[nodiscard]] double hold(Platform platform);
// Mends that a line takes: floating 3, with a sinking leader 2, sinking tip 1 (before it is under), full sinking 0.
[[nodiscard]] int mends(LineKind kind);
// t_free = (1 + mends) x 1.5 m / du, du = (0.25 hold + 0.10 (1 - hold)) U; at most two minutes, so that still water has
// one.
[[nodiscard]] Duration drag_free_time(int mends, double hold, SurfaceSpeed surface);

}  // namespace floatwright
