#pragma once
// The steady shape of a line in a stream (docs/equations.md, "The line in the water"): tension and angle integrated up
// from the fly through leader, sinking part and buoyant floating body, shot on the fly's depth. Both surface ends:
// ButtAtSurface holds the tip's butt at the surface (a floor of depth), BodyPulledUnder integrates on into the floating
// body until it is level, which is the surface (central value). Within 0.2 % of the fly's depth of far finer steps.
// Where the stream dies away at the bed a line may hang at more than one depth: the answer is one of them, as a rule
// the upper. Sources: Pode 1951 (critical angle); Cheng 2013 (normal drag of a cylinder); tangential coefficient is
// judgement.
#include <vector>

#include "engine/sinking/line_part.hpp"
#include "engine/units/measured.hpp"
#include "engine/water/profile.hpp"

namespace floatwright {

enum class SurfaceEnd { ButtAtSurface, BodyPulledUnder };

struct SteadyCase {
  std::vector<LinePart> parts;  // from the fly up
  TowedFly fly;
  Length depth;
  SurfaceSpeed surface_speed;
  Profile profile;
  Temperature temperature = celsius(10.0);
  Speed line_along, line_across;  // velocity of the whole line over the ground (boat frame: the boat's)
  double tangential_drag = 0.012;
  SurfaceEnd end = SurfaceEnd::BodyPulledUnder;
  bool has_bed = true;  // false: depth goes on past the bed, the profile frozen there
};

struct SteadyShape {
  Length fly_depth, tip_depth, butt_depth;
  Angle at_surface;  // of the line below horizontal at the surface end
  Force tension;     // at the surface end
  bool on_the_bed = false;
  struct Point {
    Length along, depth;  // along the stream from the surface end, downstream positive
  };
  std::vector<Point> points;  // from the surface end down to the fly
};

// Absent "..." with the reason: no root, a part of no length, a line lighter than water all along.
[[nodiscard]] Measured<SteadyShape> steady_shape(const SteadyCase& in);

}  // namespace floatwright
