#include "engine/sinking/line_shape.hpp"

#include <algorithm>
#include <cmath>

#include "engine/sinking/cast_run.hpp"
#include "engine/sinking/indicator.hpp"
#include "engine/sinking/pulled_cast.hpp"

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

// What of a chain is in the water, up to the first joint that is not.
constexpr Length kOnTop = millimetres(5.0);
LineShape shape_of(const Chain<Alone>& chain) {
  std::vector<Row> rows;
  Length line;
  for (std::size_t i = 0; i < chain.joints(); ++i) {
    const Length depth = metres(of_lane(chain.joint(i).at.down, 0));
    rows.push_back({line, depth});
    if (depth < kOnTop && i > 0) break;
    if (i < chain.pieces()) line = line + metres(of_lane(chain.length(i), 0));
  }
  return {laid_flat(rows), std::max(Length{}, metres(of_lane(chain.out(), 0)) - rows.back().line)};
}

Measured<LineShape> pulled_shape(const Tackle& tackle, const Rig& rig, const Technique& technique,
                                 const CastSetting& setting, Length wanted) {
  const WaterAndBoat place{&setting.water, setting.boat};
  const auto in = pulled_case(tackle, rig, technique, setting.cast, place);
  if (!in) return Absent{in.why_absent()};
  CastRun<Alone> run(*in, {&place, 1}, kCoarse);
  LineShape nearest = shape_of(run.chain());
  double deepest = 0.0, off = wanted.si();  // m
  while (run.time() < setting.limits.longest_cast.si() && run.advance()) {
    const double fly = of_lane(run.chain().joint(0).at.down, 0);  // m
    const bool deeper = fly > deepest;
    if (!deeper && std::abs(fly - wanted.si()) >= off) continue;
    deepest = std::max(deepest, fly);
    off = std::abs(fly - wanted.si());
    nearest = shape_of(run.chain());
  }
  return nearest;
}

Measured<LineShape> hung_shape(const Tackle& tackle, const Rig& rig, const CastSetting& setting) {
  const auto hung = hung_weight(tackle.flies[rig.fly], rig.shot, setting.water.properties);
  if (!hung) return Absent{hung.why_absent()};
  if (!setting.leader_set) return Absent{"no leader is given"};
  const std::vector<Length> joints = indicator_joints(setting.leader_set->length, *hung, setting.water);
  std::vector<Row> rows;
  for (std::size_t i = 0; i < joints.size(); ++i)
    rows.push_back(
        {setting.leader_set->length * (static_cast<double>(i) / static_cast<double>(joints.size() - 1)), joints[i]});
  return LineShape{laid_flat(rows), std::max(Length{}, setting.cast - setting.leader_set->length)};
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
