#pragma once
// How deep fly and tip settle along a course on which the stream past a tight line quickens or the line grows shorter
// all the way. Steady shapes are solved at a few moments of it and read between them by the line out over the speed
// past it, in which steady depth runs nearly straight.
#include <span>
#include <vector>

#include "engine/sinking/pulled_line.hpp"

namespace floatwright {

struct Depths {
  Length fly, tip;
};

class SettledCurve {
 public:
  // Absent where a moment has no steady shape. At least one moment.
  [[nodiscard]] static Measured<SettledCurve> through(const PulledLine& line, std::span<const Moment> moments);
  // With `out` of line as it was solved for.
  [[nodiscard]] Depths at(Length out, Speed past_it) const;
  // The most line that any of it takes to the surface: with more than that out it is the same curve.
  [[nodiscard]] Length line_taken() const { return metres(line_taken_); }

 private:
  struct Value {
    double depth, slope;  // m, m/s
  };
  struct Node {
    double key;  // s, line out over speed past it
    Value fly, tip;
  };
  void add_slopes(Value Node::*value);
  std::vector<Node> nodes_;  // key rising
  double line_taken_ = 0.0;  // m
};

}  // namespace floatwright
