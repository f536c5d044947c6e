#include "engine/sinking/chain_line.hpp"

#include <algorithm>
#include <cmath>
#include <numbers>

namespace floatwright {
namespace {

// Judgement. A fly that floats displaces three times what it weighs.
constexpr double kFloatingFlyDisplaces = 3.0;
constexpr double kBroadsideOverTowed = 4.0;  // where the sink rate does not say

Length longest(PartKind kind, const Resolution& resolution) {
  switch (kind) {
    case PartKind::Leader:
      return resolution.leader;
    case PartKind::Sinking:
      return resolution.sinking;
    case PartKind::Floating:
      return resolution.body;
  }
  return resolution.sinking;
}

ChainFly chain_fly(const TowedFly& fly, Density water) {
  const double weight = fly.weight_in_water.si();  // N
  const double towed = fly.towed_drag_area.si();   // m2
  const bool sinks = weight > 0.0 && fly.sink_rate > Speed{};
  const double broadside = sinks ? sinking_drag_area(fly.weight_in_water, fly.sink_rate, water).si()  // m2
                                 : kBroadsideOverTowed * towed;
  if (weight >= 0.0) {
    const double mass = weight / (kFlyInWater * kStandardGravity);
    return {mass, (1.0 - kFlyInWater) * mass, weight, towed, broadside};
  }
  const double mass = -weight / ((kFloatingFlyDisplaces - 1.0) * kStandardGravity);
  return {mass, kFloatingFlyDisplaces * mass, weight, towed, broadside};
}

// Half the angle of an arc that is 1 + slack times as long as its chord: a/sin a = 1 + slack.
double half_angle(double slack) {
  double low = 0.0, high = std::numbers::pi;
  for (int i = 0; i < 60 && slack > 0.0; ++i) {
    const double middle = 0.5 * (low + high);
    (middle < (1.0 + slack) * std::sin(middle) ? low : high) = middle;
  }
  return low;
}

}  // namespace

ChainLine chain_line(const CastCase& in, const WaterProperties& water, const Resolution& resolution) {
  ChainLine line{{}, chain_fly(in.fly, water.density), in.tangential_drag, 0};
  for (std::size_t i = 0; i < in.parts.size(); ++i) {
    const LinePart& part = in.parts[i];
    const bool body = i + 1 == in.parts.size();
    const double out = body ? in.line_out.si() : part.length.si();  // m
    const double most = longest(part.kind, resolution).si();        // m
    const double d = part.diameter.si();                            // m
    const double displaced = water.density.si() * std::numbers::pi * d * d / 4.0;
    const EndWeights weights = end_weights(part, water);
    const double low = weights.low.si(), high = weights.high.si();  // N/m
    const int pieces = std::max(1, static_cast<int>(std::ceil(out / most - 1e-9)));
    for (int k = 0; k < pieces; ++k) {
      const double weight = low + (high - low) * (k + 0.5) / pieces;  // N/m
      const double mass = weight / kStandardGravity + displaced;
      line.pieces.push_back({out / pieces, most, d, weight, mass, displaced});
    }
    if (part.kind == PartKind::Leader && line.tip + static_cast<std::size_t>(pieces) == line.pieces.size())
      line.tip = line.pieces.size();
  }
  return line;
}

std::vector<Triple<double>> landed(const CastCase& in, const ChainLine& line) {
  const double body = in.line_out.si(), chord = body / (1.0 + in.slack);  // m
  const double half = half_angle(in.slack);                               // rad
  const double radius = half > 0.0 ? body / (2.0 * half) : 0.0;           // m
  const double cosine = std::cos(in.bearing.si()), sine = std::sin(in.bearing.si());
  const auto at = [&](double way, double upstream) {  // m, along the cast and square to it
    return Triple<double>{way * cosine - upstream * sine, 0.0, way * sine + upstream * cosine};
  };
  double out = 0.0;  // m, from the rod
  for (const ChainPiece& piece : line.pieces) out += piece.length;
  std::vector<Triple<double>> joints;
  for (std::size_t i = 0; i <= line.pieces.size(); ++i) {
    if (i > 0) out -= line.pieces[i - 1].length;
    if (out >= body) {
      joints.push_back(at(chord + out - body, 0.0));
    } else if (half <= 0.0) {
      joints.push_back(at(out, 0.0));
    } else {
      const double angle = half * (2.0 * out / body - 1.0);  // rad, from the arc's middle
      joints.push_back(at(radius * (std::sin(angle) + std::sin(half)), radius * (std::cos(angle) - std::cos(half))));
    }
  }
  joints.back() = {0.0, 0.0, 0.0};
  return joints;
}

}  // namespace floatwright
