#include "engine/sinking/steady.hpp"

#include <algorithm>
#include <cmath>

#include "engine/sinking/case_faults.hpp"
#include "engine/sinking/settle.hpp"

namespace floatwright {
namespace {

constexpr double kBedMargin = 0.1;   // share of the depth that boulders stand in; judgement
constexpr double kFirstShare = 0.4;  // of the depth, where the first shot is taken at the deepest

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
  if (std::string fault = fault_of(in); !fault.empty()) return Absent{std::move(fault)};
  const Stream stream(in.surface_speed, in.profile, in.depth);
  const UpwardLine line(in.parts, in.fly, water_at(in.temperature), stream, in.tangential_drag, in.end);
  if (!(line.heaviness() > Force{})) return Absent{"a line lighter than water all along floats: it has no depth"};
  const LineVelocity velocity{in.line_along, in.line_across};
  const auto found = settled_shot(line, velocity, line.length(), first_guess(in, line));
  if (!found) return Absent{found.why_absent()};
  return shape_of(in, *found);
}

}  // namespace floatwright
