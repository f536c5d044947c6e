#include "tests/support/reference_chain.hpp"

#include <algorithm>
#include <cmath>

namespace floatwright {
namespace {

constexpr double g = kStandardGravity;  // m/s2
constexpr std::size_t kProfileCells = 4000;

double size(const Vec& a) { return std::sqrt(dot(a, a)); }
Vec direction(const Vec& a) {
  const double length = size(a);
  return length > 1e-12 ? (1.0 / length) * a : Vec{1.0, 0.0, 0.0};
}

}  // namespace

ReferenceChain::ReferenceChain(const CastCase& in, const ReferenceChoices& choices)
    : in_(in),
      choices_(choices),
      rho_(water_density(in.temperature).si()),
      depth_(in.depth.si()),
      surface_(in.surface_speed.si()),
      boat_(in.boat.si() + choices.shift),
      fly_mass_(std::abs(in.fly.weight_in_water.si()) / (choices.fly_weight_share * g)),
      fly_broadside_(4.0 * in.fly.towed_drag_area.si()) {
  const double rate = in.fly.sink_rate.si(), weight = in.fly.weight_in_water.si();
  if (rate > 0.0 && weight > 0.0) fly_broadside_ = 2.0 * weight / (rho_ * rate * rate);
  for (std::size_t i = 0; i <= kProfileCells; ++i) {
    const double height = 1.0 - static_cast<double>(i) / kProfileCells;
    profile_.push_back(surface_ * share_of_surface(in.profile, in.depth, height) + choices.shift);
  }
  profile_.push_back(profile_.back());
  lay_out(in);
}

double ReferenceChain::line_out() const {
  double out = 0.0;
  for (const Segment& s : segments_) out += s.rest;
  return out;
}

double ReferenceChain::water_speed(double depth) const {
  const double place = std::clamp(depth / depth_, 0.0, 1.0) * kProfileCells;
  const auto i = static_cast<std::size_t>(place);
  return profile_[i] + (place - static_cast<double>(i)) * (profile_[i + 1] - profile_[i]);
}

double ReferenceChain::submerged(double depth, double diameter) const {
  return std::clamp(0.5 + depth / (choices_.submergence_diameters * diameter), 0.0, 1.0);
}

// N/m of the water that goes `past` a segment lying `along`.
Vec ReferenceChain::drag_per_length(const Segment& s, const Vec& along, const Vec& past) const {
  const double ut = dot(past, along);
  const Vec un = past - ut * along;
  const double fn = s.normal.per_speed(metres_per_second(size(un))).si();
  return fn * un + s.wetted_drag * std::abs(ut) * ut * along;
}

double ReferenceChain::feed_rate() const {
  if (t_ < in_.feed.si() && fed_left_ > 0.0) return std::abs(surface_ + choices_.shift - boat_);
  if (in_.strip.si() > 0.0 && t_ >= in_.count.si() && !stripped()) return -in_.strip.si();
  return 0.0;
}

bool ReferenceChain::stripped() const { return in_.strip.si() > 0.0 && line_out() <= in_.least_out.si(); }

void ReferenceChain::load_segments(double top_rate) {
  for (std::size_t i = 0; i < segments_.size(); ++i) {
    const Segment& s = segments_[i];
    const Node &low = nodes[i], &high = nodes[i + 1];
    const Vec reach = high.at - low.at;
    const double length = size(reach);
    const Vec along = direction(reach);
    const double depth = 0.5 * (low.at.down + high.at.down);
    const double under = submerged(depth, s.diameter);
    Vec half{0.0, 0.5 * s.rest * (s.mass - under * s.displaced) * g, 0.0};
    if (!choices_.drag_at_nodes) {
      const Vec past = Vec{water_speed(depth), 0.0, 0.0} - 0.5 * (low.velocity + high.velocity);
      half = half + (0.5 * s.rest * under) * drag_per_length(s, along, past);
    }
    double tension = 0.0;
    if (length > s.rest) {
      const double c = choices_.wave_speed;
      const double parting = dot(high.velocity - low.velocity, along) - (i + 1 == segments_.size() ? top_rate : 0.0);
      tension = std::max(0.0, s.mass * c * (c * (length / s.rest - 1.0) + 2.0 * choices_.spring_damping * parting));
    }
    loads_[i].force = loads_[i].force + half + tension * along;
    loads_[i + 1].force = loads_[i + 1].force + half - tension * along;
    const double added = 0.5 * s.rest * choices_.added_mass * under * s.displaced;
    for (Load* load : {&loads_[i], &loads_[i + 1]}) {
      load->mass += 0.5 * s.rest * s.mass + added;
      const Vec &t = along, a = added * along;
      load->xx += a.along * t.along, load->xy += a.along * t.down, load->xz += a.along * t.across;
      load->yy += a.down * t.down, load->yz += a.down * t.across, load->zz += a.across * t.across;
    }
  }
}

void ReferenceChain::load_nodes_with_drag() {
  for (std::size_t i = 0; i + 1 < nodes.size(); ++i) {
    const Vec along = direction(nodes[i + 1].at - nodes[i > 0 ? i - 1 : 0].at);
    const Vec past = Vec{water_speed(nodes[i].at.down), 0.0, 0.0} - nodes[i].velocity;
    for (const std::size_t s : {i > 0 ? i - 1 : i, i}) {
      const double share = (i > 0 ? 0.5 : 0.25) * submerged(nodes[i].at.down, segments_[s].diameter);
      loads_[i].force = loads_[i].force + share * segments_[s].rest * drag_per_length(segments_[s], along, past);
    }
  }
}

// m2 (m/s)2: area times speed squared, in the direction of the water past the fly.
Vec ReferenceChain::fly_area_speed2(const Vec& past, const Vec& axis) const {
  const double towed = in_.fly.towed_drag_area.si();
  const auto one_area = [&](double area) { return (area * size(past)) * past; };
  const auto two_areas = [&](const Vec& slim, const Vec& wide) {
    return (towed * size(slim)) * slim + (fly_broadside_ * size(wide)) * wide;
  };
  const Vec along = dot(past, axis) * axis, level{past.along, 0.0, past.across};
  switch (choices_.fly_drag) {
    case ReferenceChoices::FlyDrag::Broadside:
      return one_area(fly_broadside_);
    case ReferenceChoices::FlyDrag::Towed:
      return one_area(towed);
    case ReferenceChoices::FlyDrag::ByPlane:
      return two_areas(level, past - level);
    case ReferenceChoices::FlyDrag::ByAxis:
      break;
  }
  return two_areas(along, past - along);
}

void ReferenceChain::load_fly() {
  const Node& fly = nodes.front();
  const Vec axis = direction(nodes[1].at - fly.at);
  const double under = submerged(fly.at.down, 0.005 / choices_.submergence_diameters);  // a fly some 5 mm thick
  const double weight = in_.fly.weight_in_water.si();
  const Vec past = Vec{water_speed(fly.at.down), 0.0, 0.0} - fly.velocity;
  Load& load = loads_.front();
  const double heavy = weight + (1.0 - under) * (fly_mass_ * g - weight);  // N, all its weight in air
  load.force = load.force + (0.5 * rho_ * under) * fly_area_speed2(past, axis) + Vec{0.0, heavy, 0.0};
  load.mass += fly_mass_;
}

// A soft bed pushes up, never down; it holds back what slides on it if it has friction.
void ReferenceChain::load_bed() {
  if (!in_.has_bed) return;
  for (std::size_t i = 0; i + 1 < nodes.size(); ++i) {
    const double into = nodes[i].at.down - depth_;
    if (into <= 0.0) continue;
    const double w = choices_.bed_rate;
    const double push = std::max(0.0, loads_[i].mass * w * (w * into + 2.0 * nodes[i].velocity.down));
    Vec slide = nodes[i].velocity - Vec{choices_.shift, 0.0, 0.0};
    slide.down = 0.0;
    const double hold = choices_.bed_friction * push / std::max(size(slide), 0.01);
    loads_[i].force = loads_[i].force - Vec{0.0, push, 0.0} - hold * slide;
  }
}

// (mass I - added along) a = force, by Cramer's rule; then the places with the new speeds.
void ReferenceChain::move(double dt) {
  for (std::size_t i = 0; i + 1 < nodes.size(); ++i) {
    const Load& m = loads_[i];
    const double a = m.mass - m.xx, b = -m.xy, c = -m.xz, d = m.mass - m.yy, e = -m.yz, f = m.mass - m.zz;
    const double A = d * f - e * e, B = c * e - b * f, C = b * e - c * d;
    const double D = a * f - c * c, E = b * c - a * e, F = a * d - b * b;
    const double per = dt / (a * A + b * B + c * C);
    const Vec& p = m.force;
    const Vec kick{A * p.along + B * p.down + C * p.across, B * p.along + D * p.down + E * p.across,
                   C * p.along + E * p.down + F * p.across};
    nodes[i].velocity = nodes[i].velocity + per * kick;
    nodes[i].at = nodes[i].at + dt * nodes[i].velocity;
  }
  nodes.back().at.along += dt * boat_;
}

// The uppermost segment grows and is split in two, or shrinks and is joined to the next.
void ReferenceChain::feed(double dt, double rate) {
  if (rate == 0.0) return;
  if (rate > 0.0) {
    const double more = std::min(rate * dt, fed_left_);
    fed_left_ -= more;
    segments_.back().rest += more;
    if (segments_.back().rest < 1.5 * choices_.segment) return;
    const Node &low = nodes[nodes.size() - 2], &rod = nodes.back();
    const double share = choices_.segment / segments_.back().rest;
    const Vec leaving = rod.velocity + rate * direction(low.at - rod.at);
    const Node between{low.at + share * (rod.at - low.at), low.velocity + share * (leaving - low.velocity)};
    Segment upper = segments_.back();
    upper.rest -= choices_.segment;
    segments_.back().rest = choices_.segment;
    segments_.push_back(upper);
    nodes.insert(nodes.end() - 1, between);
  } else {
    segments_.back().rest += rate * dt;
    if (segments_.size() < 2 || segments_.back().rest > 0.5 * choices_.segment) return;
    const double left = segments_.back().rest;
    segments_.pop_back();
    segments_.back().rest += left;
    nodes.erase(nodes.end() - 2);
  }
}

void ReferenceChain::step(double dt) {
  const double rate = feed_rate();
  loads_.assign(nodes.size(), Load{});
  load_segments(rate);
  if (choices_.drag_at_nodes) load_nodes_with_drag();
  load_fly();
  load_bed();
  move(dt);
  feed(dt, rate);
  t_ += dt;
}

void ReferenceChain::advance_to(double t) {
  const double longest = choices_.courant * choices_.segment / choices_.wave_speed;
  const int steps = static_cast<int>(std::ceil((t - t_) / longest - 1e-9));
  const double dt = steps > 0 ? (t - t_) / steps : 0.0;
  for (int i = 0; i < steps; ++i) step(dt);
  t_ = t;
}

CastRow ReferenceChain::row() const {
  std::size_t tip = 0;
  while (tip < segments_.size() && segments_[tip].leader) ++tip;
  if (tip == segments_.size()) tip = 0;
  const Node& fly = nodes.front();
  const Vec from_rod = fly.at - nodes.back().at;
  return {seconds(t_),
          metres(nodes[tip].at.down),
          metres(fly.at.down),
          radians(std::atan2(from_rod.across, from_rod.along)),
          metres_per_second(std::hypot(fly.velocity.along - choices_.shift, fly.velocity.across)),
          metres_per_second(std::hypot(fly.velocity.along - water_speed(fly.at.down), fly.velocity.across))};
}

double ReferenceChain::energy() const {
  double sum = 0.0;
  const auto add = [&](const Node& node, double mass, double weight) {
    sum += 0.5 * mass * dot(node.velocity, node.velocity) - weight * node.at.down;
  };
  for (std::size_t i = 0; i < segments_.size(); ++i) {
    const Segment& s = segments_[i];
    const double half = 0.5 * s.rest;  // m
    for (const std::size_t n : {i, i + 1}) add(nodes[n], half * s.mass, half * (s.mass - s.displaced) * g);
  }
  add(nodes.front(), fly_mass_, in_.fly.weight_in_water.si());
  return sum;
}

double ReferenceChain::fastest() const {
  double most = 0.0;
  for (const Node& node : nodes) most = std::max(most, size(node.velocity - nodes.back().velocity));
  return most;
}

double ReferenceChain::stretch() const {
  double most = 0.0;
  for (std::size_t i = 0; i < segments_.size(); ++i) {
    most = std::max(most, size(nodes[i + 1].at - nodes[i].at) / segments_[i].rest - 1.0);
  }
  return most;
}

SimulatedCast reference_cast(const CastCase& in, const ReferenceChoices& choices, Duration until) {
  constexpr double kAtRest = 2e-4;  // m/s
  ReferenceChain chain(in, choices);
  SimulatedCast cast;
  const int rows = static_cast<int>(std::lround(until.si() / 0.1));
  bool at_rest = false;
  for (int i = 0; i <= rows && !chain.stripped(); ++i) {
    if (!at_rest) chain.advance_to(0.1 * i);
    at_rest = at_rest || (in.strip.si() == 0.0 && 0.1 * i > in.feed.si() + 5.0 && chain.fastest() < kAtRest);
    cast.rows.push_back(chain.row());
    cast.rows.back().t = seconds(0.1 * i);
    cast.deepest_fly = std::max(cast.deepest_fly, cast.rows.back().fly_depth);
  }
  cast.end_fly = cast.rows.back().fly_depth;
  return cast;
}

}  // namespace floatwright
