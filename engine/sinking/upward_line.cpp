#include "engine/sinking/upward_line.hpp"

#include <algorithm>
#include <bit>
#include <cmath>
#include <cstdint>
#include <numbers>

#include "engine/sinking/section.hpp"

namespace floatwright {
namespace {

constexpr double kMostGrowth = 4.0, kMostCut = 0.2, kShortOfTheBound = 0.9;  // of a step, by its error
constexpr double kLeastStep = 1e-6;    // of the line's length: taken whatever its error, to be sure to end
constexpr double kLeastSlope = 0.002;  // of a line that counts, in the error allowed
constexpr double kLevel = 1e-9;        // N, downward pull of a line that lies level
constexpr double kLevelShare = 0.999;  // of a step: a level line this near to its end is read off within it
constexpr int kLevelTries = 3;

// About the length within which the line turns at its lower end.
double first_step(const LineStretch& stretch, double u2, const LineState& at, const LineState& slope) {
  const double drag = stretch.normal.at(metres_per_second(std::sqrt(u2))).si();  // N/m
  const double turn = std::sqrt(slope.pull2()) + 0.1 * drag;                     // N/m
  return turn > 0.0 ? 0.3 * std::max(kLeastTension, std::sqrt(at.pull2())) / turn : stretch.length;
}

// Of a third-order step whose squared error may be `room` times what it is.
double growth(double room) { return std::clamp(kShortOfTheBound * std::cbrt(std::sqrt(room)), kMostCut, kMostGrowth); }

}  // namespace

struct UpwardLine::Course {
  LineState at;
  double fly_depth, out;  // m
  double along, past;     // m/s: the line's velocity along the stream, the water's past it across
  bool trace;
  double left = out;  // m of line still above
  bool level = false;
  std::vector<SteadyShape::Point> points{};
  std::vector<Length> line_to{};

  [[nodiscard]] Length line() const { return metres(out - left); }  // from the fly
  // Of the line so far, or `there` where that is more.
  [[nodiscard]] double slope_so_far(double there) const {
    const double run = out - left;  // m
    return std::max({kLeastSlope, there, run > 0.0 ? std::abs(fly_depth - at.y) / run : 0.0});
  }
  [[nodiscard]] double speed2(const Stream& stream) const {  // m2/s2, of the water past it
    const double u = stream.at(metres(at.y)).si() - along;
    return u * u + past * past;
  }
  void mark() {
    if (!trace) return;
    points.push_back({metres(at.x), metres(at.y)});
    line_to.push_back(line());
  }
};

UpwardLine::UpwardLine(const std::vector<LinePart>& parts, const TowedFly& fly, const WaterProperties& water,
                       const Stream& stream, double tangential_drag, SurfaceEnd end, double tolerance)
    : fly_(fly), density_(water.density.si()), stream_(&stream), end_(end), tolerance_(tolerance) {
  heaviness_ = std::max(0.0, fly.weight_in_water.si());
  lift_ = std::max(0.0, -fly.weight_in_water.si());
  lifts_ = lift_ > 0.0;
  for (const LinePart& part : parts) {
    if (part.kind == PartKind::Floating && end == SurfaceEnd::ButtAtSurface && !parts_.empty()) break;
    const EndWeights weights = end_weights(part, water);
    const double low = weights.low.si(), high = weights.high.si();  // N/m
    const double length = part.length.si();                         // m
    const double wetted = 0.5 * density_ * tangential_drag * std::numbers::pi * part.diameter.si();
    parts_.push_back({part.kind, {length, low, (high - low) / length, wetted, NormalDrag(part.diameter, water)}});
    length_ += length;
    const double weight = 0.5 * (low + high) * length;  // N
    heaviness_ += std::max(0.0, weight);
    lift_ += std::max(0.0, -weight);
    lifts_ = lifts_ || (part.kind != PartKind::Floating && std::min(low, high) < 0.0);
  }
}

// sin^2/cos = w/R, the critical angle (Pode 1951), for weights and drags over the whole line.
Length UpwardLine::straight_depth(Speed past) const {
  double weight = fly_.weight_in_water.si(), drag = 0.0, heavy = 0.0;  // N, N, m
  for (const Part& part : parts_) {
    const LineStretch& line = part.stretch;
    const double w = line.weight + 0.5 * line.length * line.weight_gain;  // N/m
    if (w <= 0.0) continue;
    weight += w * line.length;
    drag += line.length * line.normal.at(past).si();
    heavy += line.length;
  }
  const double k = weight / std::max(drag, kLeastTension);
  const double cosine = weight > 0.0 ? 0.5 * (std::sqrt(k * k + 4.0) - k) : 1.0;
  return metres(heavy * std::sqrt(std::max(0.0, 1.0 - cosine * cosine)));
}

// Where the fly is: drag of the stream on its towed area, and its weight.
LineState UpwardLine::start(double depth, double carried, const LineVelocity& velocity) const {
  const double u = stream_->at(metres(depth)).si() - velocity.along.si();                     // m/s
  const double v = -velocity.across.si();                                                     // m/s
  const double drag = 0.5 * density_ * fly_.towed_drag_area.si() * std::sqrt(u * u + v * v);  // kg/s
  return {drag * u, drag * v, fly_.weight_in_water.si() + carried, 0.0, depth};
}

// Up through one part, or what is out of it, or to where a floating body lies level, which is the surface.
void UpwardLine::climb(const Part& part, Course& course) const {
  const bool may_level = part.kind == PartKind::Floating && end_ == SurfaceEnd::BodyPulledUnder;
  course.level = may_level && course.at.py <= 0.0;
  const auto slope = [&](double s, const LineState& at) {
    return part.stretch.slope(*stream_, course.along, course.past, s, at);
  };
  const double length = std::min(part.stretch.length, course.left), least = kLeastStep * length_;  // m
  const double left_after = course.left - length;                                                  // m
  LineState k1 = slope(0.0, course.at);
  double wish = first_step(part.stretch, course.speed2(*stream_), course.at, k1);  // m
  int tries = kLevelTries;
  for (double s = 0.0; s < length * (1.0 - 1e-12) && !course.level;) {
    double ds = std::min(std::max(wish, least), length - s);  // m
    LineStep step = line_step(slope, s, ds, course.at, k1);
    const double bound = tolerance_ * course.slope_so_far(std::abs(k1.y)),
                 room = bound * bound / std::max(step.error2, 1e-30);
    wish = ds * growth(room);
    if (room < 1.0 && ds > least) continue;
    if (may_level && step.end.py <= kLevel) {
      const double share = level_share(course.at, k1, step, ds);
      wish = ds * share;
      if (share < kLevelShare && tries-- > 0) continue;
      step.end = level_state(course.at, k1, step, ds, share);
      course.level = true;
      ds = wish;
    }
    course.at = step.end, k1 = step.slope_there;
    s += ds;
    course.left = left_after + length - s;
    course.mark();
  }
}

Shot UpwardLine::shoot(Length fly_depth, const LineVelocity& velocity, Length out, Force carried, bool trace) const {
  Course course{start(fly_depth.si(), carried.si(), velocity),
                fly_depth.si(),
                out.si(),
                velocity.along.si(),
                -velocity.across.si(),
                trace};
  course.mark();
  Shot shot;
  bool tip_seen = false;
  for (const Part& part : parts_) {
    if (part.kind != PartKind::Leader && !tip_seen) {
      shot.tip_depth = shot.butt_depth = metres(course.at.y);
      shot.line_to_tip = shot.line_to_butt = course.line();
      tip_seen = true;
    }
    climb(part, course);
    if (part.kind == PartKind::Sinking) shot.butt_depth = metres(course.at.y), shot.line_to_butt = course.line();
    if (course.level || course.left <= 0.0) break;
  }
  const LineState& end = course.at;
  shot.end_depth = metres(end.y);
  shot.line = course.line();
  if (!tip_seen) {
    shot.tip_depth = shot.butt_depth = shot.end_depth;
    shot.line_to_tip = shot.line_to_butt = shot.line;
  }
  shot.at_end = radians(std::atan2(end.py, std::hypot(end.px, end.pz)));
  shot.tension = newtons(std::sqrt(end.pull2()));
  shot.points = std::move(course.points);
  shot.line_to = std::move(course.line_to);
  return shot;
}

}  // namespace floatwright
