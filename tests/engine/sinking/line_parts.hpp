#pragma once
// Parts of a line as the tests of casts and of steady shapes build theirs.
#include "engine/sinking/line_part.hpp"

namespace floatwright {

inline LinePart leader(double metres_long) {
  return {PartKind::Leader, metres(metres_long), millimetres(0.30), kilograms_per_cubic_metre(1140.0), {}, {}};
}
inline LinePart sinking(double metres_long, double metres_per_second_down) {
  const Speed rate = metres_per_second(metres_per_second_down);
  return {PartKind::Sinking, metres(metres_long), millimetres(1.0), {}, rate, rate};
}
inline LinePart floating(double metres_long) {
  return {PartKind::Floating, metres(metres_long), millimetres(1.6), kilograms_per_cubic_metre(870.0), {}, {}};
}

// A 14 ft tip of 6 in/s behind a short leader, in 1.5 m of water: what a cast and a steady case share.
template <class Case>
Case tip_in_a_run_of(double metres_per_second_at_surface) {
  Case in;
  in.parts = {leader(1.2), sinking(4.27, 0.1524), floating(20.0)};
  in.fly = {newtons(0.001), metres_per_second(0.0762), square_metres(8.611e-5)};
  in.depth = metres(1.5);
  in.surface_speed = surface_metres_per_second(metres_per_second_at_surface);
  return in;
}

}  // namespace floatwright
