#pragma once
// A line integrated upward from its fly at a guessed depth: the resultant P of weight and drag on all that hangs below
// gives the line's direction, dP/ds = w + drag per length, dr/ds = -P/|P|. The same as the equations of tension and
// angle (docs/equations.md), but without an angle that loses its meaning in a boat's frame, where the stream may turn
// with depth. Kutta's third-order steps, as near as fourth-order ones here for a quarter less work, shortened where the
// tension is small.
#include <vector>

#include "engine/sinking/cylinder_drag.hpp"
#include "engine/sinking/steady.hpp"
#include "engine/sinking/stream.hpp"
#include "engine/sinking/water_properties.hpp"

namespace floatwright {

// Steps at least in a leader, a sinking part and a floating body; there are more where the line takes up its angle.
struct Fineness {
  int leader = 16, sinking = 32, floating = 64;
};

// The whole line's velocity over the ground.
struct LineVelocity {
  Speed along, across;
};

struct Shot {
  Length end_depth;  // below the surface, where it should be 0: at the butt held, or where the pulled body is level
  Length tip_depth, butt_depth;
  Length line;                             // from the fly to that end
  Angle at_end;                            // below the horizontal
  Force tension;                           // at that end
  std::vector<SteadyShape::Point> points;  // from the fly up, `along` counted from the fly; empty unless asked for
  std::vector<Length> line_to;             // by point: line from the fly to it
};

class UpwardLine {
 public:
  // Parts of some length and diameter; `stream` outlives the line.
  UpwardLine(const std::vector<LinePart>& parts, const TowedFly& fly, const WaterProperties& water,
             const Stream& stream, double tangential_drag, SurfaceEnd end, Fineness fineness = {});

  // `out`: of the line from the fly up; the rest has been taken in. `carried`: weight taken off the fly or added to it
  // by the surface it lies on; none below the surface.
  [[nodiscard]] Shot shoot(Length fly_depth, const LineVelocity& velocity, Length out, Force carried = {},
                           bool trace = false) const;
  [[nodiscard]] Length length() const { return metres(length_); }
  // Whether any of it, up to the end that is held, is lighter than water.
  [[nodiscard]] bool lifts() const { return lifts_; }
  // All weights in water that are over 0, together; and all that are below it, as a positive force.
  [[nodiscard]] Force heaviness() const { return newtons(heaviness_); }
  [[nodiscard]] Force lift() const { return newtons(lift_); }

 private:
  struct Part {
    PartKind kind;
    double length;                   // m
    double weight_low, weight_high;  // N/m in water, at the lower and the upper end
    double wetted_drag;              // kg/m2, 1/2 rho Ct pi d
    double settled_drag;             // kg/m/s, drag per speed square to the line at its own sink rate
    NormalDrag normal;
    int steps;
  };
  struct State;
  struct Slope;
  struct Course;
  [[nodiscard]] Slope slope(const Part& part, double share, const State& at, const LineVelocity& velocity) const;
  [[nodiscard]] State stepped(const Part& part, double share, double ds, const State& at, const Slope& slope_there,
                              const LineVelocity& velocity) const;
  [[nodiscard]] double step_length(const Part& part, const Slope& slope_there) const;
  [[nodiscard]] State start(double depth, double carried, const LineVelocity& velocity) const;
  // Shortens `ds` to where the line is level.
  [[nodiscard]] State levelled(const Part& part, double share, double& ds, const State& at, const Slope& slope_there,
                               double pull_after, const LineVelocity& velocity) const;
  [[nodiscard]] bool climb(const Part& part, const LineVelocity& velocity, Course& course) const;

  std::vector<Part> parts_;
  TowedFly fly_;
  double density_;  // kg/m3
  const Stream* stream_;
  SurfaceEnd end_;
  double length_ = 0.0, heaviness_ = 0.0, lift_ = 0.0;
  bool lifts_ = false;
};

}  // namespace floatwright
