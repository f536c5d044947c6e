#include "engine/sinking/upward_line.hpp"

#include <algorithm>
#include <cmath>
#include <numbers>

#include "engine/sinking/section.hpp"

namespace floatwright {
namespace {

constexpr double kLeastTension = 1e-6;  // N, a tenth of a milligram: below it a line has no direction of its own
constexpr double kSteadyStep = 1.2;     // step over the length in which a line takes up its angle; holds to 2.5
constexpr int kLevelSteps = 3;          // of a secant, to where a floating body is level
constexpr int kMostSubsteps = 32;       // a step is cut no further than this

// Weight in water of a part's ends, lower and upper: from its sink rate, else from its density.
std::pair<double, double> end_weights(const LinePart& part, const WaterProperties& water) {
  if (!part.sink_rate_end && !part.sink_rate_butt) {
    const double w = weight_for_density(part.density, part.diameter, water).si();
    return {w, w};
  }
  const Speed low = part.sink_rate_end ? *part.sink_rate_end : *part.sink_rate_butt;
  const Speed high = part.sink_rate_butt ? *part.sink_rate_butt : low;
  return {weight_for_rate(low, part.diameter, water).si(), weight_for_rate(high, part.diameter, water).si()};
}

// Drag per speed of a line at the angle that it tends to, where it meets the water square at about its own sink rate.
double settled_drag(const LinePart& part, double low, double high) {
  const double fast =
      part.sink_rate_end ? part.sink_rate_end->si() : (part.sink_rate_butt ? part.sink_rate_butt->si() : 0.0);
  return fast > 0.0 ? std::max(low, high) / fast : 0.0;  // kg/m/s
}

int steps_of(PartKind kind, const Fineness& fineness) {
  switch (kind) {
    case PartKind::Leader:
      return fineness.leader;
    case PartKind::Sinking:
      return fineness.sinking;
    case PartKind::Floating:
      return fineness.floating;
  }
  return fineness.sinking;
}

}  // namespace

// Resultant of all below (N) and place (m): along the stream, across it, downward; the place across is not asked for.
struct UpwardLine::State {
  double px, pz, py, x, y;
  [[nodiscard]] State plus(double k, const State& d) const {
    return {px + k * d.px, pz + k * d.pz, py + k * d.py, x + k * d.x, y + k * d.y};
  }
};

struct UpwardLine::Slope {
  State per_metre;
  double tension;  // N
  double drag;     // kg/m/s square to the line
  double speed2;   // m2/s2, of the water past it
};

struct UpwardLine::Course {
  State at;
  double left;  // m of line still above
  bool trace;
  std::vector<SteadyShape::Point> points;
  std::vector<double> left_at;  // m, by point
};

UpwardLine::UpwardLine(const std::vector<LinePart>& parts, const TowedFly& fly, const WaterProperties& water,
                       const Stream& stream, double tangential_drag, SurfaceEnd end, Fineness fineness)
    : fly_(fly), density_(water.density.si()), stream_(&stream), end_(end) {
  heaviness_ = std::max(0.0, fly.weight_in_water.si());
  lift_ = std::max(0.0, -fly.weight_in_water.si());
  lifts_ = lift_ > 0.0;
  for (const LinePart& part : parts) {
    if (part.kind == PartKind::Floating && end == SurfaceEnd::ButtAtSurface && !parts_.empty()) break;
    const auto [low, high] = end_weights(part, water);
    const double wetted = 0.5 * density_ * tangential_drag * std::numbers::pi * part.diameter.si();
    parts_.push_back({part.kind, part.length.si(), low, high, wetted, settled_drag(part, low, high),
                      NormalDrag(part.diameter, water), steps_of(part.kind, fineness)});
    length_ += part.length.si();
    const double weight = 0.5 * (low + high) * part.length.si();  // N
    heaviness_ += std::max(0.0, weight);
    lift_ += std::max(0.0, -weight);
    lifts_ = lifts_ || (part.kind != PartKind::Floating && std::min(low, high) < 0.0);
  }
}

// Where the fly is: drag of the stream on its towed area, and its weight.
UpwardLine::State UpwardLine::start(double depth, double carried, const LineVelocity& velocity) const {
  const double u = stream_->at(metres(depth)).si() - velocity.along.si();                     // m/s
  const double v = -velocity.across.si();                                                     // m/s
  const double drag = 0.5 * density_ * fly_.towed_drag_area.si() * std::sqrt(u * u + v * v);  // kg/s
  return {drag * u, drag * v, fly_.weight_in_water.si() + carried, 0.0, depth};
}

UpwardLine::Slope UpwardLine::slope(const Part& part, double share, const State& at,
                                    const LineVelocity& velocity) const {
  const double tension = std::sqrt(at.px * at.px + at.pz * at.pz + at.py * at.py);  // N
  const bool slack = tension < kLeastTension;
  const double per_newton = slack ? 0.0 : 1.0 / tension;  // 1/N
  const double tx = at.px * per_newton, tz = at.pz * per_newton, ty = slack ? 1.0 : at.py * per_newton;
  const double ux = stream_->at(metres(at.y)).si() - velocity.along.si();           // m/s, water past the line
  const double uz = -velocity.across.si();                                          // m/s
  const double ut = ux * tx + uz * tz;                                              // m/s, along the line
  const double u2 = ux * ux + uz * uz;                                              // m2/s2
  const double un = std::sqrt(std::max(0.0, u2 - ut * ut));                         // m/s, square to the line
  const double fn = part.normal.per_speed(metres_per_second(un)).si();              // kg/m/s
  const double f = part.wetted_drag * std::abs(ut) * ut - fn * ut;                  // N/m along the line
  const double w = part.weight_low + share * (part.weight_high - part.weight_low);  // N/m
  return {{fn * ux + f * tx, fn * uz + f * tz, f * ty + w, -tx, -ty}, tension, fn, u2};
}

UpwardLine::State UpwardLine::stepped(const Part& part, double share, double ds, const State& at, const Slope& there,
                                      const LineVelocity& velocity) const {
  const double half = share + 0.5 * ds / part.length, whole = share + ds / part.length;
  const State& k1 = there.per_metre;
  const State k2 = slope(part, half, at.plus(0.5 * ds, k1), velocity).per_metre;
  const State k3 = slope(part, whole, at.plus(2.0 * ds, k2).plus(-ds, k1), velocity).per_metre;
  return at.plus(ds / 6.0, k1.plus(4.0, k2).plus(1.0, k3));
}

// A line of tension T takes up its angle within T/(dF/dangle): steps longer than that would swing about it.
double UpwardLine::step_length(const Part& part, const Slope& there) const {
  const double even = part.length / part.steps;                                                      // m
  const double stiffness = 2.0 * std::max(there.drag, part.settled_drag) * std::sqrt(there.speed2);  // N/m per rad
  if (stiffness <= 0.0) return even;
  const double tension = std::max(there.tension, kLeastTension);  // N
  return std::clamp(kSteadyStep * tension / stiffness, even / kMostSubsteps, even);
}

// Steps again, to where the line is level: a secant on the vertical pull, which runs near enough linearly to 0.
UpwardLine::State UpwardLine::levelled(const Part& part, double share, double& ds, const State& at, const Slope& there,
                                       double pull_after, const LineVelocity& velocity) const {
  double low = 0.0, low_pull = at.py, high = ds, high_pull = pull_after;  // m, N
  State level = at;
  for (int i = 0; i < kLevelSteps; ++i) {
    ds = low + (high - low) * low_pull / (low_pull - high_pull);
    level = stepped(part, share, ds, at, there, velocity);
    if (level.py > 0.0) {
      low = ds, low_pull = level.py;
    } else {
      high = ds, high_pull = level.py;
    }
    if (low_pull <= 0.0 || low_pull == high_pull) break;
  }
  level.py = 0.0;
  return level;
}

// Up through one part, or what is out of it; true where a floating body has come level, which is the surface.
bool UpwardLine::climb(const Part& part, const LineVelocity& velocity, Course& course) const {
  const bool may_level = part.kind == PartKind::Floating && end_ == SurfaceEnd::BodyPulledUnder;
  const double length = std::min(part.length, course.left);  // m
  const double before = course.left;                         // m
  for (double s = 0.0; s < length * (1.0 - 1e-12);) {
    if (may_level && course.at.py <= 0.0) return true;
    const double share = s / part.length;
    const Slope there = slope(part, share, course.at, velocity);
    double ds = std::min(step_length(part, there), length - s);  // m
    State next = stepped(part, share, ds, course.at, there, velocity);
    const bool level = may_level && next.py <= 0.0;
    if (level) next = levelled(part, share, ds, course.at, there, next.py, velocity);
    course.at = next;
    s += ds;
    course.left = before - s;
    if (course.trace) {
      course.points.push_back({metres(course.at.x), metres(course.at.y)});
      course.left_at.push_back(course.left);
    }
    if (level) return true;
  }
  return false;
}

Shot UpwardLine::shoot(Length fly_depth, const LineVelocity& velocity, Length out, Force carried, bool trace) const {
  Course course{start(fly_depth.si(), carried.si(), velocity), out.si(), trace, {}, {}};
  if (trace) {
    course.points.push_back({Length{}, fly_depth});
    course.left_at.push_back(course.left);
  }
  Shot shot;
  bool tip_seen = false;
  for (const Part& part : parts_) {
    if (part.kind != PartKind::Leader && !tip_seen) {
      shot.tip_depth = shot.butt_depth = metres(course.at.y);
      tip_seen = true;
    }
    const bool level = climb(part, velocity, course);
    if (part.kind == PartKind::Sinking) shot.butt_depth = metres(course.at.y);
    if (level || course.left <= 0.0) break;
  }
  const State& end = course.at;
  shot.end_depth = metres(end.y);
  if (!tip_seen) shot.tip_depth = shot.butt_depth = shot.end_depth;
  shot.line = out - metres(course.left);
  shot.at_end = radians(std::atan2(end.py, std::hypot(end.px, end.pz)));
  shot.tension = newtons(std::hypot(end.px, end.pz, end.py));
  shot.points = std::move(course.points);
  for (const double left : course.left_at) shot.line_to.push_back(out - metres(left));
  return shot;
}

}  // namespace floatwright
