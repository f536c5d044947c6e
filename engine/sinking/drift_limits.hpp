#pragma once
// How long a cast lasts, in one place: what can be mended, when it drags, how far it runs past the boat, and when it is
// over whatever happens. Judgement; the values here are those shipped, and a guide's own come with the call.
#include "engine/river/river.hpp"
#include "engine/tackle/tackle.hpp"

namespace floatwright {

struct DriftLimits {
  // Mends that a line allows. A shooting head's thin running line has little to mend with (common practice, no source).
  double floating_mends = 3, sinking_leader_mends = 2, sinking_tip_mends = 1, shooting_head_mends = 1,
         full_sinking_mends = 0, dry_mends = 2;
  Length slack = metres(1.5);  // each mend's, and the cast's own
  // Speed at which line and fly part, as a share of the surface speed, and how firmly a platform stands: 0 goes with
  // the stream, 1 does not. Wading is as anchored.
  double drag_anchored = 0.25, drag_drifting = 0.10;
  double hold_drifting = 0.0, hold_held = 0.35, hold_anchored = 1.0;
  double casts_of_drift = 1.2;                 // from a boat that does not drift: lengths of cast that drift past it
  Duration longest_indicator = seconds(40.0);  // from a drifting boat
  Duration longest_dry = seconds(30.0), longest_cast = seconds(60.0);
  Speed led_through_water = metres_per_second(0.10);  // a led nymph drags so much
  Angle hang_down = degrees(8.0);                     // a swung fly hangs so near to straight downstream
  Duration hang_down_stay = seconds(3.0);             // and is left so long
};

[[nodiscard]] double hold(Platform platform, const DriftLimits& limits);

// A dry fly's mends do not depend on its line, but for a shooting head that allows fewer.
[[nodiscard]] double mends(LineKind kind, Method method, const DriftLimits& limits);

// t_free = (1 + mends) slack / du, du = (drag_anchored hold + drag_drifting (1 - hold)) U; at most the longest cast.
[[nodiscard]] Duration drag_free_time(double mends, Platform platform, SurfaceSpeed surface, const DriftLimits& limits);

}  // namespace floatwright
