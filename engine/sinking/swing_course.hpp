#pragma once
// Where a cast line lies through a swing or a retrieve, seen from the rod: its bearing from the way the stream runs and
// how much of it is out. While slack it goes with the surface water; tight, the belly leads it round faster than the
// water: tan(theta/2) falls as exp(-1.5 U t/L), which moves it at 1.5 U sin(theta) square to itself and leaves
// U_rel = U sqrt(cos^2 + 0.25 sin^2) of stream past it. All of it judgement, until the cast is simulated.
#include <vector>

#include "engine/sinking/cast_path.hpp"

namespace floatwright {

inline constexpr double kBellyLead = 1.5;  // pace of a tight line's belly over the stream's

struct Moment {
  Duration t;           // from landing; strip: from the end of the count, below 0 while counting
  Angle bearing;        // from straight down the stream
  double cosine, sine;  // of it
  Length out;           // rod tip to fly along the line
  bool slack = false;
  Speed strip;  // line coming in
};
[[nodiscard]] Moment moment(Duration t, Angle bearing, Length out, bool slack, Speed strip);

struct SwingCourse {
  std::vector<Moment> moments;  // even in time from t = 0 on; before it the count
  std::size_t landed = 0;       // index of t = 0
  Duration hang_down;           // hangs straight down the stream, by the limits; else the end
};

// `stream`: the surface's speed past the rod, 0 or more.
[[nodiscard]] SwingCourse swing_course(Mending mending, Speed stream, Length cast, const DriftLimits& limits);
// Cast square to the stream; ends with `least_out` between fly and rod tip, or after the longest cast.
[[nodiscard]] SwingCourse strip_course(Duration count, Speed strip, Speed stream, Length cast, Length least_out,
                                       const DriftLimits& limits);
// Where a swing begins.
[[nodiscard]] Angle cast_downstream();

}  // namespace floatwright
