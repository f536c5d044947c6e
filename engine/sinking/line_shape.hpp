#pragma once
// The shape in which a line fishes, to be drawn: laid out flat along its own course, so that slope and depth are true
// where the line also bends round across the stream. Swing and strip: the simulated cast at the moment, not before
// the fly was deepest, at which it is nearest to a wanted depth. Indicator: the leader as it drifts. A led or a dry fly
// has no shape to solve.
#include "engine/sinking/cast_path.hpp"

namespace floatwright {

struct LineShape {
  struct Point {
    Length away, depth;  // away: horizontally along the line, from where it leaves the surface
  };
  std::vector<Point> points;  // from the surface down to the fly
  Length on_top;              // line out that lies on the surface, between that point and the rod
};

[[nodiscard]] Measured<LineShape> line_shape(const Tackle& tackle, const Rig& rig, const Technique& technique,
                                             const CastSetting& setting, Length wanted_fly_depth);

}  // namespace floatwright
