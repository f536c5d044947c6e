#include "engine/sinking/surface_hold.hpp"

#include <algorithm>
#include <cmath>

#include "engine/sinking/cylinder_drag.hpp"
#include "engine/sinking/rigged_line.hpp"

namespace floatwright {
namespace {

constexpr double kWettedOnTop = 0.5;  // of a floating body's thickness; judgement
constexpr Length kPiece = metres(0.1);

// The line from the fly up: depth by length along it. Beyond the shape it lies on the surface.
class Laid {
 public:
  explicit Laid(const LineShape& shape) {
    double line = 0.0;  // m
    for (std::size_t i = shape.points.size(); i-- > 0;) {
      const auto& p = shape.points[i];
      if (!line_.empty()) line += std::hypot((last_.away - p.away).si(), (last_.depth - p.depth).si());
      last_ = p;
      line_.push_back(line);
      depth_.push_back(p.depth.si());
    }
  }
  [[nodiscard]] Length depth_at(Length line) const {
    const auto above = std::ranges::lower_bound(line_, line.si());
    if (above == line_.end()) return Length{};
    const auto i = static_cast<std::size_t>(above - line_.begin());
    if (i == 0) return metres(depth_.front());
    const double span = line_[i] - line_[i - 1];
    const double way = span > 0.0 ? (line.si() - line_[i - 1]) / span : 1.0;
    return metres(depth_[i - 1] + way * (depth_[i] - depth_[i - 1]));
  }

 private:
  std::vector<double> line_, depth_;  // m
  LineShape::Point last_{};
};

}  // namespace

Measured<double> surface_hold(const Tackle& tackle, const Rig& rig, Method method, const CastSetting& setting,
                              const LineShape& shape) {
  const auto line = rigged_line(tackle, rig, method, setting.cast);
  if (!line) return Absent{line.why_absent()};
  const Laid laid(shape);
  double near_surface = 0.0, all = 0.0;  // N
  Length below;                          // of the part, from the fly
  for (const LinePart& part : parts_out(*line, setting.cast)) {
    const NormalDrag drag(part.diameter, setting.water.properties);
    const double pieces = std::max(1.0, std::round(part.length / kPiece));
    for (int i = 0; i < static_cast<int>(pieces); ++i) {
      const Length depth = laid.depth_at(below + part.length * ((i + 0.5) / pieces));
      const Speed past = metres_per_second(std::abs((setting.water.stream.at(depth) - setting.boat).si()));
      const bool on_top = part.kind == PartKind::Floating && !(depth > Length{});
      const double load = drag.at(past).si() * part.length.si() / pieces * (on_top ? kWettedOnTop : 1.0);  // N
      all += load;
      if (depth <= setting.water.depth * kFastLayer) near_surface += load;
    }
    below = below + part.length;
  }
  if (!(all > 0.0)) return Absent{"the water does not move past the line"};
  return near_surface / all;
}

}  // namespace floatwright
