#include "engine/sinking/line_shape.hpp"

#include <algorithm>
#include <cmath>

#include "engine/sinking/indicator.hpp"
#include "engine/sinking/pulled_line.hpp"
#include "engine/sinking/settle.hpp"

namespace floatwright {
namespace {

// From rows of (line from the fly, depth), the fly first.
struct Row {
  Length line, depth;
};
std::vector<LineShape::Point> laid_flat(const std::vector<Row>& rows) {
  std::vector<LineShape::Point> points;
  double away = 0.0;  // m
  for (std::size_t i = rows.size(); i-- > 0;) {
    if (i + 1 < rows.size()) {
      const double ds = (rows[i + 1].line - rows[i].line).si(), dy = (rows[i].depth - rows[i + 1].depth).si();  // m
      away += std::sqrt(std::max(0.0, ds * ds - dy * dy));
    }
    points.push_back({metres(away), std::max(Length{}, rows[i].depth)});
  }
  return points;
}

SwingCourse course_of(const PulledLine& line, const Technique& technique, const CastSetting& setting) {
  const Speed past = std::max(line.past, -line.past);
  if (technique.method == Method::Swing) return swing_course(technique.mending, past, setting.cast, setting.limits);
  return strip_course(technique.count, technique.strip, past, setting.cast, line.line.least_out, setting.limits);
}

struct SettledMoment {
  Moment at;
  Settled settled;
};

Measured<SettledMoment> nearest_moment(const PulledLine& line, const SwingCourse& course, Length wanted) {
  Measured<SettledMoment> nearest = Absent{"the line is slack all the cast"};
  for (std::size_t i = course.landed; i < course.moments.size(); ++i) {
    const Moment& at = course.moments[i];
    if (at.slack) continue;
    const auto settled = settle(line.upward, tight_velocity(line, at), at.out, wanted);
    if (!settled) return Absent{settled.why_absent()};
    const auto off = [&](const Settled& s) { return std::abs((s.fly_depth - wanted).si()); };
    if (!nearest || off(*settled) < off(nearest->settled)) nearest = SettledMoment{at, *settled};
  }
  return nearest;
}

Measured<LineShape> pulled_shape(const Tackle& tackle, const Rig& rig, const Technique& technique,
                                 const CastSetting& setting, Length wanted) {
  const auto line = pulled_line(tackle, rig, technique.method, setting);
  if (!line) return Absent{line.why_absent()};
  if (technique.method == Method::Strip && !(technique.strip > Speed{})) return Absent{"no speed of stripping is given"};
  const auto found = nearest_moment(*line, course_of(*line, technique, setting), wanted);
  if (!found) return Absent{found.why_absent()};
  const Moment& at = found->at;
  const Shot shot = line->upward.shoot(found->settled.fly_depth, tight_velocity(*line, at), at.out, found->settled.carried, true);
  std::vector<Row> rows;
  for (std::size_t i = 0; i < shot.points.size(); ++i) rows.push_back({shot.line_to[i], shot.points[i].depth});
  return LineShape{laid_flat(rows), std::max(Length{}, at.out - shot.line)};
}

Measured<LineShape> hung_shape(const Tackle& tackle, const Rig& rig, const CastSetting& setting) {
  const auto hung = hung_weight(tackle.flies[rig.fly], rig.shot, setting.water.properties);
  if (!hung) return Absent{hung.why_absent()};
  if (!setting.leader_set) return Absent{"no leader is given"};
  const std::vector<Length> joints = indicator_joints(*setting.leader_set, *hung, setting.water);
  std::vector<Row> rows;
  for (std::size_t i = 0; i < joints.size(); ++i)
    rows.push_back({*setting.leader_set * (static_cast<double>(i) / static_cast<double>(joints.size() - 1)), joints[i]});
  return LineShape{laid_flat(rows), std::max(Length{}, setting.cast - *setting.leader_set)};
}

}  // namespace

Measured<LineShape> line_shape(const Tackle& tackle, const Rig& rig, const Technique& technique,
                               const CastSetting& setting, Length wanted_fly_depth) {
  switch (technique.method) {
    case Method::Swing:
    case Method::Strip:
      return pulled_shape(tackle, rig, technique, setting, wanted_fly_depth);
    case Method::Indicator:
      return hung_shape(tackle, rig, setting);
    default:
      return Absent{"a led or a dry fly has no shape to solve"};
  }
}

}  // namespace floatwright
