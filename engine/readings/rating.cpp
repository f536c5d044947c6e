#include "engine/readings/rating.hpp"

#include <fmt/format.h>

#include <algorithm>
#include <cmath>

namespace floatwright {
namespace {

// One stretch between two points, in SI: stages in m, flows in m3/s.
struct Stretch {
  double h0, q0, h1, q1;
  double zero;  // m, the offset
  bool logarithmic;

  // Q = Q0 ((h - e) / (h0 - e))^b with b so that the stretch ends in its second point.
  [[nodiscard]] double power() const { return std::log(q1 / q0) / std::log((h1 - zero) / (h0 - zero)); }
  [[nodiscard]] double flow(double h) const {
    if (h == h0) return q0;
    if (h == h1) return q1;
    if (!logarithmic) return q0 + (q1 - q0) * (h - h0) / (h1 - h0);
    return q0 * std::pow((h - zero) / (h0 - zero), power());
  }
  [[nodiscard]] double stage(double q) const {
    if (q == q0 || q1 == q0) return h0;
    if (q == q1) return h1;
    if (!logarithmic) return h0 + (h1 - h0) * (q - q0) / (q1 - q0);
    return zero + (h0 - zero) * std::pow(q / q0, 1.0 / power());
  }
};

// The offset of the stretch's middle: a breakpoint between two offsets is a point of the table.
double zero_of(const Rating& rating, double middle) {
  double zero = rating.offsets.empty() ? 0.0 : rating.offsets.front().zero.si();
  for (const Rating::Offset& offset : rating.offsets)
    if (offset.from.si() <= middle) zero = offset.zero.si();
  return zero;
}

Stretch stretch_from(const Rating& rating, std::size_t first) {
  const RatingPoint &low = rating.points[first], &high = rating.points[first + 1];
  Stretch out{low.stage.si(), low.flow.si(), high.stage.si(), high.flow.si(), 0.0, false};
  out.zero = zero_of(rating, 0.5 * (out.h0 + out.h1));
  out.logarithmic = rating.between == Rating::Between::Logarithmic && out.h0 > out.zero && out.q0 > 0.0;
  return out;
}

}  // namespace

Measured<Discharge> flow_at(const Rating& rating, Stage stage) {
  const auto& points = rating.points;
  if (points.size() < 2) return Absent{"the rating has no table"};
  if (!(stage >= points.front().stage && stage <= points.back().stage))
    return Absent{fmt::format("a stage of {:.2f} ft is outside the rating, which goes from {:.2f} to {:.2f} ft",
                              in_feet(stage), in_feet(points.front().stage), in_feet(points.back().stage))};
  const auto above = std::lower_bound(points.begin() + 1, points.end() - 1, stage,
                                      [](const RatingPoint& point, Stage s) { return point.stage < s; });
  return Discharge::from_si(
      stretch_from(rating, static_cast<std::size_t>(above - points.begin()) - 1).flow(stage.si()));
}

Measured<Stage> stage_at(const Rating& rating, Discharge flow) {
  const auto& points = rating.points;
  if (points.size() < 2) return Absent{"the rating has no table"};
  if (!(flow >= points.front().flow && flow <= points.back().flow))
    return Absent{fmt::format("a flow of {:.6g} cfs is outside the rating, which goes from {:.6g} to {:.6g} cfs",
                              in_cubic_feet_per_second(flow), in_cubic_feet_per_second(points.front().flow),
                              in_cubic_feet_per_second(points.back().flow))};
  const auto above = std::lower_bound(points.begin() + 1, points.end() - 1, flow,
                                      [](const RatingPoint& point, Discharge q) { return point.flow < q; });
  return Stage::from_si(stretch_from(rating, static_cast<std::size_t>(above - points.begin()) - 1).stage(flow.si()));
}

}  // namespace floatwright
