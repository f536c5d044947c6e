#pragma once
// A line integrated upward from its fly at a guessed depth: the resultant P of weight and drag on all that hangs below
// gives the line's direction, dP/ds = w + drag per length, dr/ds = -P/|P|. The same as the equations of tension and
// angle (docs/equations.md), but without an angle that loses its meaning in a boat's frame, where the stream may turn
// with depth. A step is as long as its error allows: short where the tension is small and the line takes up its angle
// within millimetres, metres where it lies straight.
#include <vector>

#include "engine/sinking/line_step.hpp"
#include "engine/sinking/steady.hpp"
#include "engine/sinking/stream.hpp"
#include "engine/sinking/water_properties.hpp"

namespace floatwright {

// The whole line's velocity over the ground.
struct LineVelocity {
  Speed along, across;
};

struct Shot {
  Length end_depth;  // below the surface, where it should be 0: at the butt held, or where the pulled body is level
  Length tip_depth, butt_depth;
  Length line;  // from the fly to that end
  Length line_to_tip, line_to_butt;
  Angle at_end;                            // below the horizontal
  Force tension;                           // at that end
  std::vector<SteadyShape::Point> points;  // from the fly up, `along` counted from the fly; empty unless asked for
  std::vector<Length> line_to;             // by point: line from the fly to it
};

// How wrong a step may leave the line's direction, over its slope so far: the fly's depth is then within 0.1 % of far
// finer steps.
inline constexpr double kSteadyTolerance = 4e-4;

class UpwardLine {
 public:
  // Parts of some length and diameter; `stream` outlives the line.
  UpwardLine(const std::vector<LinePart>& parts, const TowedFly& fly, const WaterProperties& water,
             const Stream& stream, double tangential_drag, SurfaceEnd end, double tolerance = kSteadyTolerance);

  // `out`: of the line from the fly up; the rest has been taken in. `carried`: weight taken off the fly or added to it
  // by the surface it lies on; none below the surface.
  [[nodiscard]] Shot shoot(Length fly_depth, const LineVelocity& velocity, Length out, Force carried = {},
                           bool trace = false) const;
  [[nodiscard]] Length length() const { return metres(length_); }
  // Whether any of it, up to the end that is held, is lighter than water.
  [[nodiscard]] bool lifts() const { return lifts_; }
  // About how deep it would lie if all of it lay straight, at the angle at which weight and drag balance in this speed.
  [[nodiscard]] Length straight_depth(Speed past) const;
  // All weights in water that are over 0, together; and all that are below it, as a positive force.
  [[nodiscard]] Force heaviness() const { return newtons(heaviness_); }
  [[nodiscard]] Force lift() const { return newtons(lift_); }

 private:
  struct Part {
    PartKind kind;
    LineStretch stretch;
  };
  struct Course;
  [[nodiscard]] LineState start(double depth, double carried, const LineVelocity& velocity) const;
  void climb(const Part& part, Course& course) const;

  std::vector<Part> parts_;
  TowedFly fly_;
  double density_;  // kg/m3
  const Stream* stream_;
  SurfaceEnd end_;
  double tolerance_;  // rad
  double length_ = 0.0, heaviness_ = 0.0, lift_ = 0.0;
  bool lifts_ = false;
};

}  // namespace floatwright
