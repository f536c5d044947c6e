#pragma once
// One step up a line: the pull of all that hangs below and the place, and how they change with the line. Steps are of
// third order and carry an answer of second order with them (Bogacki & Shampine 1989, from memory): the difference says
// how wrong the step may be, and the slope at its end serves the next one. SI throughout: the solver's interior.
#include <algorithm>
#include <cmath>

#include "engine/sinking/cylinder_drag.hpp"
#include "engine/sinking/stream.hpp"

namespace floatwright {

inline constexpr double kLeastTension = 1e-9;  // N, below it a line has no direction of its own and hangs

// Pull (N) and place (m): along the stream, across it, downward; the place across is not asked for. Or their change
// over a metre of line.
struct LineState {
  double px, pz, py, x, y;
  [[nodiscard]] LineState times(double k) const { return {k * px, k * pz, k * py, k * x, k * y}; }
  [[nodiscard]] LineState plus(double k, const LineState& d) const {
    return {px + k * d.px, pz + k * d.pz, py + k * d.py, x + k * d.x, y + k * d.y};
  }
  [[nodiscard]] double pull2() const { return px * px + pz * pz + py * py; }  // N2
};

// One part of a line on its way up through a stream.
struct LineStretch {
  double length;               // m
  double weight, weight_gain;  // N/m in water at the lower end, N/m2 upward
  double wetted_drag;          // kg/m2, 1/2 rho Ct pi d
  NormalDrag normal;

  // Change over a metre of line, `s` m up this part. `along`: the line's own velocity along the stream, `past`: the
  // water's past it across the stream, m/s.
  [[nodiscard]] LineState slope(const Stream& stream, double along, double past, double s, const LineState& at) const {
    const double tension2 = at.pull2();  // N2
    const bool slack = tension2 < kLeastTension * kLeastTension;
    const double per_newton = slack ? 0.0 : 1.0 / std::sqrt(tension2);  // 1/N
    const double tx = at.px * per_newton, tz = at.pz * per_newton, ty = slack ? 1.0 : at.py * per_newton;
    const double ux = stream.at(metres(at.y)).si() - along;                      // m/s, water past the line
    const double ut = ux * tx + past * tz;                                       // m/s, along the line
    const double un2 = std::max(0.0, ux * ux + past * past - ut * ut);           // m2/s2, square to the line
    const double fn = normal.per_speed(metres_per_second(std::sqrt(un2))).si();  // kg/m/s
    const double f = (wetted_drag * std::abs(ut) - fn) * ut;                     // N/m along the line
    const double w = weight + s * weight_gain;                                   // N/m
    return {fn * ux + f * tx, fn * past + f * tz, f * ty + w, -tx, -ty};
  }
};

struct LineStep {
  LineState end, slope_there;
  double error2;  // of the line's direction, rad2
};

// A step of `ds` from a state with its slope. The error counts by how far the pull may be turned, and in part by how
// the line's direction differs within the step: where a slack line straightens the pull alone does not show it.
template <class Slope>
[[nodiscard]] LineStep line_step(const Slope& slope, double s, double ds, const LineState& at, const LineState& k1) {
  constexpr double kOfDirection = 0.1;  // found by trial on cases in nearly still water
  const LineState k2 = slope(s + 0.5 * ds, at.plus(0.5 * ds, k1));
  const LineState k3 = slope(s + 0.75 * ds, at.plus(0.75 * ds, k2));
  const LineState end = at.plus(ds / 9.0, k1.times(2.0).plus(3.0, k2).plus(4.0, k3));
  const LineState k4 = slope(s + ds, end);
  const LineState off = k1.times(-5.0).plus(6.0, k2).plus(8.0, k3).plus(-9.0, k4).times(1.0 / 72.0);
  const double pull2 = std::max(kLeastTension * kLeastTension, end.pull2());  // N2
  const double turned2 = off.pull2() * ds * ds / pull2, apart = kOfDirection * off.y;
  return {end, k4, turned2 + apart * apart};
}

// The share of a step at which the downward pull, falling from over 0 to 0 or under, is 0: of the cubic through its
// values and slopes.
[[nodiscard]] double level_share(const LineState& start, const LineState& k1, const LineStep& step, double ds);
// The state there, by the same cubic.
[[nodiscard]] LineState level_state(const LineState& start, const LineState& k1, const LineStep& step, double ds,
                                    double share);

}  // namespace floatwright
