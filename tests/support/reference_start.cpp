// How the reference chain lies when the cast lands.
#include <algorithm>
#include <cmath>
#include <numbers>

#include "engine/sinking/section.hpp"
#include "tests/support/reference_chain.hpp"

namespace floatwright {
namespace {

constexpr double kPi = std::numbers::pi;

// Weight in water per length at a share of the part up from its lower end: the sink rate runs linearly between them.
double weight_at(const LinePart& part, double share, const WaterProperties& water) {
  if (!part.sink_rate_end && !part.sink_rate_butt) return weight_for_density(part.density, part.diameter, water).si();
  const Speed low = part.sink_rate_end ? *part.sink_rate_end : *part.sink_rate_butt;
  const Speed high = part.sink_rate_butt ? *part.sink_rate_butt : low;
  return weight_for_rate(low + share * (high - low), part.diameter, water).si();
}

// Half the angle of an arc whose length is 1 + slack of its chord.
double half_angle(double slack) {
  if (slack <= 1e-9) return 0.0;
  double low = 0.0, high = kPi;
  for (int i = 0; i < 60; ++i) {
    const double mid = 0.5 * (low + high);
    (mid / std::sin(mid) < 1.0 + slack ? low : high) = mid;
  }
  return 0.5 * (low + high);
}

}  // namespace

void ReferenceChain::add_segments(const LinePart& part, double from, double to) {
  const WaterProperties water = water_at(in_.temperature);
  const double d = part.diameter.si();
  const double area = kPi * d * d / 4.0;  // m2
  const int count = std::max(1, static_cast<int>(std::ceil((to - from) / choices_.segment - 1e-9)));
  for (int i = 0; i < count; ++i) {
    const double rest = (to - from) / count;
    const double w = weight_at(part, (from + (i + 0.5) * rest) / part.length.si(), water);  // N/m
    const double wetted_drag = 0.5 * rho_ * in_.tangential_drag * kPi * d;                  // kg/m2
    segments_.push_back({rest, rho_ * area + w / kStandardGravity, rho_ * area, d, wetted_drag,
                         NormalDrag(part.diameter, water), part.kind == PartKind::Leader});
  }
}

// From the fly up, all on the surface and moving with it: straight up to the body, then the arc to the rod at 0.
void ReferenceChain::lay_out(const CastCase& in) {
  for (std::size_t i = 0; i + 1 < in.parts.size(); ++i) add_segments(in.parts[i], 0.0, in.parts[i].length.si());
  const double hanging = line_out();
  const double body = std::min(in.line_out.si(), in.parts.back().length.si());
  add_segments(in.parts.back(), 0.0, body);
  fed_left_ = in.parts.back().length.si() - body;
  const double half = half_angle(in.slack);
  const double chord = body / (1.0 + in.slack);
  const double b = in.bearing.si();
  const double side = b < 0.0 ? -1.0 : 1.0;
  const Vec ahead{std::cos(b), 0.0, std::sin(b)}, upstream{-side * std::sin(b), 0.0, side * std::cos(b)};
  double s = 0.0;  // m up from the fly
  for (std::size_t i = 0; i <= segments_.size(); ++i) {
    const double up = s - hanging;  // m of body below
    double along = chord - up, aside = 0.0;
    if (up > 0.0 && half > 0.0) {
      const double radius = chord / (2.0 * std::sin(half)), turn = half - 2.0 * half * up / body;
      along = chord / 2.0 + radius * std::sin(turn);
      aside = radius * (std::cos(turn) - std::cos(half));
    }
    nodes.push_back({along * ahead + aside * upstream, {profile_.front(), 0.0, 0.0}});
    if (i < segments_.size()) s += segments_[i].rest;
  }
  nodes.back() = {{}, {boat_, 0.0, 0.0}};
}

}  // namespace floatwright
