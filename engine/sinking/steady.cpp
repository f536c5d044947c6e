#include "engine/sinking/steady.hpp"

#include <algorithm>
#include <cmath>

#include "engine/sinking/section.hpp"
#include "engine/sinking/settle.hpp"

namespace floatwright {
namespace {

constexpr double kBedMargin = 0.1;   // share of the depth that boulders stand in; judgement
constexpr double kFirstShare = 0.4;  // of the depth, where the first shot is taken at the deepest

bool not_over_zero(double value) { return !(value > 0.0) || !std::isfinite(value); }

std::string fault_of(const LinePart& part) {
  if (not_over_zero(part.length.si())) return "a part of the line has no length";
  if (not_over_zero(part.diameter.si())) return "a part of the line has no diameter";
  for (const auto& rate : {part.sink_rate_butt, part.sink_rate_end}) {
    if (rate && !std::isfinite(rate->si())) return "a part's sink rate is not a number";
  }
  const bool rated = part.sink_rate_butt || part.sink_rate_end;
  if (!rated && not_over_zero(part.density.si())) return "a part of the line has neither a sink rate nor a density";
  return {};
}

std::string fault_of(const SteadyCase& in) {
  if (in.parts.empty()) return "the line has no parts";
  for (const LinePart& part : in.parts) {
    if (std::string fault = fault_of(part); !fault.empty()) return fault;
  }
  if (not_over_zero(in.depth.si())) return "the water has no depth";
  if (!(in.surface_speed.si() >= 0.0) || !std::isfinite(in.surface_speed.si())) return "the water's speed is below 0";
  if (!std::isfinite(in.fly.weight_in_water.si())) return "the fly's weight is not a number";
  if (!(in.fly.towed_drag_area.si() >= 0.0)) return "the fly's drag area is below 0";
  if (!(in.tangential_drag >= 0.0)) return "the drag along the line is below 0";
  if (!std::isfinite(in.line_along.si() + in.line_across.si())) return "the line's velocity is not a number";
  return {};
}

// From above: over a bed where the stream dies away a line may hang at more than one depth, and a fly comes down to
// the upper one first.
Length first_guess(const SteadyCase& in, const UpwardLine& line) {
  const double u = in_metres_per_second(in.surface_speed) - in.line_along.si();  // m/s
  const Length straight = line.straight_depth(metres_per_second(std::hypot(u, in.line_across.si())));
  return std::min(straight, in.depth * kFirstShare);
}

// Turned to run down from the surface's end, held between surface and bed.
std::vector<SteadyShape::Point> from_the_surface(const std::vector<SteadyShape::Point>& up, Length deepest) {
  std::vector<SteadyShape::Point> down(up.rbegin(), up.rend());
  for (auto& point : down) {
    point.along = point.along - up.back().along;
    point.depth = std::clamp(point.depth, Length{}, deepest);
  }
  return down;
}

SteadyShape shape_of(const SteadyCase& in, const SettledShot& found) {
  const auto& [settled, traced] = found;
  const Length deepest = in.has_bed ? in.depth : std::max(in.depth, metres(1e6));
  SteadyShape shape;
  shape.on_the_bed = in.has_bed && std::max(settled.fly_depth, traced.tip_depth) > in.depth * (1.0 - kBedMargin);
  shape.fly_depth = std::clamp(settled.fly_depth, Length{}, deepest);
  shape.tip_depth = std::clamp(traced.tip_depth, Length{}, deepest);
  shape.butt_depth = std::clamp(traced.butt_depth, Length{}, deepest);
  shape.at_surface = traced.at_end;
  shape.tension = traced.tension;
  shape.points = from_the_surface(traced.points, deepest);
  return shape;
}

}  // namespace

Measured<SteadyShape> steady_shape(const SteadyCase& in) {
  if (std::string fault = fault_of(in); !fault.empty()) return Absent{fault};
  const Stream stream(in.surface_speed, in.profile, in.depth);
  const UpwardLine line(in.parts, in.fly, water_at(in.temperature), stream, in.tangential_drag, in.end);
  if (!(line.heaviness() > Force{})) return Absent{"a line lighter than water all along floats: it has no depth"};
  const LineVelocity velocity{in.line_along, in.line_across};
  const auto found = settled_shot(line, velocity, line.length(), first_guess(in, line));
  if (!found) return Absent{found.why_absent()};
  return shape_of(in, *found);
}

}  // namespace floatwright
