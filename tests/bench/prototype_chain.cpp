#include "tests/bench/prototype_chain.hpp"

#include <algorithm>
#include <cmath>
#include <numbers>

#include "engine/sinking/section.hpp"

namespace floatwright {
namespace {

constexpr double kGoesUnderWithin = 0.02;  // m
constexpr int kPasses = 3, kMostDropped = 10;

double size(const Triple<double>& a) { return std::sqrt(dot(a, a)); }

}  // namespace

PrototypeChain::PrototypeChain(const CastCase& in, double body, double sinking, double leader) : in_(in) {
  const WaterProperties water = water_at(in.temperature);
  rho_ = water.density.si(), nu_ = water.viscosity.si();
  for (const LinePart& part : in.parts) {
    const bool uppermost = &part == &in.parts.back();
    const double length = uppermost ? in.line_out.si() : part.length.si();
    const double most = part.kind == PartKind::Leader ? leader : part.kind == PartKind::Sinking ? sinking : body;
    const int count = static_cast<int>(std::ceil(length / most));
    const double d = part.diameter.si(), area = std::numbers::pi * d * d / 4.0;
    const double w = part.sink_rate_butt ? weight_for_rate(*part.sink_rate_butt, part.diameter, water).si()
                                         : weight_for_density(part.density, part.diameter, water).si();
    const Piece piece{length / count, d, rho_ * area + w / kStandardGravity, rho_ * area};
    pieces_.insert(pieces_.end(), static_cast<std::size_t>(count), piece);
  }
  double out = 0.0;
  for (const Piece& piece : pieces_) out += piece.length;
  const double b = in.bearing.si();
  for (std::size_t i = 0; i <= pieces_.size(); ++i) {
    at_.push_back({out * std::cos(b), 0.0, out * std::sin(b)});
    velocity_.push_back({i < pieces_.size() ? in.surface_speed.si() : 0.0, 0.0, 0.0});
    if (i < pieces_.size()) out -= pieces_[i].length;
  }
  nodes_.resize(at_.size());
}

double PrototypeChain::bearing() const { return std::atan2(at_.front().across, at_.front().along); }

// Where each node would be without tension: its drag taken linear in its speed over the step.
void PrototypeChain::fall(double dt) {
  wanted_ = at_;
  for (std::size_t i = 0; i < pieces_.size(); ++i) {
    const std::size_t below = i > 0 ? i - 1 : 0;
    const Vec chord = at_[i + 1] - at_[below];
    const Vec t = (1.0 / std::max(size(chord), 1e-9)) * chord;
    const double height = 1.0 - at_[i].down / in_.depth.si();
    const double u = in_.surface_speed.si() * share_of_surface(in_.profile, in_.depth, std::clamp(height, 0.0, 1.0));
    const Vec past = Vec{u, 0.0, 0.0} - velocity_[i];
    const double ut = dot(past, t);
    const Vec un = past - ut * t;
    const double across = size(un), under = std::clamp(0.5 + at_[i].down / kGoesUnderWithin, 0.0, 1.0);
    double mass = 0.0, added = 0.0, cn = 0.0, ct = 0.0, weight = 0.0;
    for (const std::size_t p : {below, i}) {
      const Piece& piece = pieces_[p];
      const double half = (i > 0 ? 0.5 : 0.25) * piece.length;
      const double cd = cylinder_drag_coefficient(std::max(across * piece.diameter / nu_, 1e-3));
      cn += half * under * 0.5 * rho_ * cd * piece.diameter * across;
      ct += half * under * 0.5 * rho_ * in_.tangential_drag * std::numbers::pi * piece.diameter * std::abs(ut);
      mass += half * piece.mass, added += half * under * piece.displaced;
      weight += half * (piece.mass - under * piece.displaced) * kStandardGravity;
    }
    Vec force = cn * un + (ct * ut) * t + Vec{0.0, weight, 0.0};
    if (i == 0) {
      const double fly = 0.5 * rho_ * in_.fly.towed_drag_area.si() * size(past);
      force = force + fly * past + Vec{0.0, in_.fly.weight_in_water.si(), 0.0};
      mass += in_.fly.weight_in_water.si() / (0.6 * kStandardGravity), cn += fly, ct += fly;
    }
    nodes_[i] = {t, mass + added + dt * cn, mass + dt * ct};
    wanted_[i] = at_[i] + dt * (velocity_[i] + dt * moved(nodes_[i], force));
  }
  nodes_.back() = {{1.0, 0.0, 0.0}, 1e12, 1e12};  // the rod
}

PrototypeChain::Vec PrototypeChain::moved(const Node& node, const Vec& pull) const {
  const double along = dot(pull, node.tangent);
  return (1.0 / node.square) * pull + (along * (1.0 / node.along - 1.0 / node.square)) * node.tangent;
}

// N: tensions that take away what each piece is `over` its length; a piece that would push is slack.
std::vector<double> PrototypeChain::tensions(const std::vector<Vec>& way, const std::vector<double>& over,
                                             double dt) const {
  const std::size_t n = pieces_.size();
  std::vector<double> tension(n), diagonal(n), beside(n);
  std::vector<bool> tight(n);
  for (std::size_t i = 0; i < n; ++i) tight[i] = over[i] > 0.0;
  for (int drop = 0; drop < kMostDropped; ++drop) {
    for (std::size_t i = 0; i < n; ++i) {
      diagonal[i] = dot(way[i], moved(nodes_[i], way[i])) + dot(way[i], moved(nodes_[i + 1], way[i]));
      beside[i] = i + 1 < n ? -dot(way[i], moved(nodes_[i + 1], way[i + 1])) : 0.0;
      tension[i] = over[i] / (dt * dt);
      if (!tight[i]) diagonal[i] = 1.0, tension[i] = 0.0;
      if (!tight[i] || (i + 1 < n && !tight[i + 1])) beside[i] = 0.0;
    }
    for (std::size_t i = 1; i < n; ++i) {
      const double k = beside[i - 1] / diagonal[i - 1];
      diagonal[i] -= k * beside[i - 1], tension[i] -= k * tension[i - 1];
    }
    bool pushes = false;
    for (std::size_t i = n; i-- > 0;) {
      tension[i] = (tension[i] - (i + 1 < n ? beside[i] * tension[i + 1] : 0.0)) / diagonal[i];
      if (tension[i] < 0.0) pushes = true, tight[i] = false;
    }
    if (!pushes) break;
  }
  return tension;
}

// By Newton on the pieces' lengths.
void PrototypeChain::tighten(double dt) {
  const std::size_t n = pieces_.size();
  std::vector<double> over(n);
  std::vector<Vec> way(n);
  for (int pass = 0; pass < kPasses; ++pass) {
    for (std::size_t i = 0; i < n; ++i) {
      const Vec chord = wanted_[i + 1] - wanted_[i];
      const double length = size(chord);
      way[i] = (1.0 / std::max(length, 1e-9)) * chord;
      over[i] = length - pieces_[i].length;
    }
    const std::vector<double> tension = tensions(way, over, dt);
    for (std::size_t i = 0; i < n; ++i) {
      const double pull = std::max(0.0, tension[i]) * dt * dt;
      wanted_[i] = wanted_[i] + pull * moved(nodes_[i], way[i]);
      wanted_[i + 1] = wanted_[i + 1] - pull * moved(nodes_[i + 1], way[i]);
    }
  }
}

void PrototypeChain::step(double dt) {
  fall(dt);
  tighten(dt);
  for (std::size_t i = 0; i < pieces_.size(); ++i) velocity_[i] = (1.0 / dt) * (wanted_[i] - at_[i]);
  std::copy(wanted_.begin(), wanted_.end() - 1, at_.begin());
}

}  // namespace floatwright
