#include "tests/bench/plain_steady.hpp"

#include <algorithm>
#include <array>
#include <cmath>
#include <numbers>

#include "engine/sinking/water_properties.hpp"

namespace floatwright::plain {
namespace {

constexpr double kGravity = 9.80665;    // m/s2
constexpr double kLeastTension = 1e-9;  // N
constexpr double kClose = 1e-6;         // m
constexpr double kSwingFree = 1.0;      // step over the length in which a line takes up its angle; 2.78 swings
constexpr int kMostCuts = 64;

// Along the stream, across it and down: the pull of all below (N), the place (m).
enum { kPx, kPz, kPy, kX, kY };
using State = std::array<double, 5>;

State sum(const State& a, double k, const State& b) {
  State out{};
  for (std::size_t i = 0; i < out.size(); ++i) out[i] = a[i] + k * b[i];
  return out;
}

struct Problem {
  const SteadyCase& in;
  double rho, nu;  // kg/m3, m2/s
};

// Cheng 2013.
double cd(double re) {
  const double r = std::min(re, 2e5);
  return 11.0 * std::pow(r, -0.75) + 0.9 * (1.0 - std::exp(-1000.0 / r)) +
         1.2 * (1.0 - std::exp(-std::pow(r / 4500.0, 0.7)));
}

double normal_drag_per_speed(const Problem& p, double d, double u) {
  return u > 0.0 ? 0.5 * p.rho * cd(u * d / p.nu) * d * u : 0.0;
}

double stream(const Problem& p, double y) {
  const double h = p.in.depth.si(), us = in_metres_per_second(p.in.surface_speed);
  const double z = std::clamp(1.0 - y / h, 0.02, 1.0);
  const double ks = p.in.profile.roughness.si();
  if (p.in.profile.law == Profile::Law::Uniform) return us;
  if (p.in.profile.law == Profile::Law::Power || !(ks > 0.0)) return us * std::pow(z, p.in.profile.exponent);
  const double at_surface = std::log(30.0 * std::max(1.0, h / ks));
  return us * std::max(0.0, (at_surface + std::log(z)) / at_surface);
}

double weight(const Problem& p, const LinePart& part, double share) {
  const double d = part.diameter.si();
  if (!part.sink_rate_butt && !part.sink_rate_end)
    return (part.density.si() - p.rho) * kGravity * std::numbers::pi * d * d / 4.0;
  const auto at_rate = [&](double v) {
    return std::copysign(normal_drag_per_speed(p, d, std::abs(v)), v) * std::abs(v);
  };
  const Speed low = part.sink_rate_end ? *part.sink_rate_end : *part.sink_rate_butt;
  const Speed high = part.sink_rate_butt ? *part.sink_rate_butt : low;
  return at_rate(low.si()) + share * (at_rate(high.si()) - at_rate(low.si()));
}

State slope(const Problem& p, const LinePart& part, double w_low, double w_high, double share, const State& at) {
  const double pull = std::hypot(at[kPx], at[kPz], at[kPy]);
  const bool slack = pull < kLeastTension;
  const double tx = slack ? 0.0 : at[kPx] / pull, tz = slack ? 0.0 : at[kPz] / pull, ty = slack ? 1.0 : at[kPy] / pull;
  const double ux = stream(p, at[kY]) - p.in.line_along.si(), uz = -p.in.line_across.si();
  const double ut = ux * tx + uz * tz;
  const double nx = ux - ut * tx, nz = uz - ut * tz, ny = -ut * ty;
  const double fn = normal_drag_per_speed(p, part.diameter.si(), std::hypot(nx, nz, ny));
  const double ft = 0.5 * p.rho * p.in.tangential_drag * std::numbers::pi * part.diameter.si() * std::abs(ut) * ut;
  return {fn * nx + ft * tx, fn * nz + ft * tz, fn * ny + ft * ty + w_low + share * (w_high - w_low), -tx, -ty};
}

double swing_free_step(const Problem& p, const LinePart& part, double w, const State& at) {
  const double d = part.diameter.si();
  const double u = std::hypot(stream(p, at[kY]) - p.in.line_along.si(), p.in.line_across.si());
  const double pull = std::hypot(at[kPx], at[kPz], at[kPy]);
  const double square = std::max(kLeastTension, pull > 0.0 ? u * std::abs(at[kPy]) / pull : u);
  const double stiffness = 2.0 * normal_drag_per_speed(p, d, square) * u + std::abs(w);
  return stiffness > 0.0 ? kSwingFree * std::max(pull, kLeastTension) / stiffness : 1e9;
}

State stepped(const Problem& p, const LinePart& part, double w0, double w1, double s, double ds, const State& at) {
  const double length = part.length.si(), a = s / length, b = (s + 0.5 * ds) / length, c = (s + ds) / length;
  const State k1 = slope(p, part, w0, w1, a, at), k2 = slope(p, part, w0, w1, b, sum(at, 0.5 * ds, k1));
  const State k3 = slope(p, part, w0, w1, b, sum(at, 0.5 * ds, k2)), k4 = slope(p, part, w0, w1, c, sum(at, ds, k3));
  State out = at;
  for (std::size_t i = 0; i < out.size(); ++i) out[i] += ds / 6.0 * (k1[i] + 2.0 * k2[i] + 2.0 * k3[i] + k4[i]);
  return out;
}

// Up one part; true where a floating body has come level.
bool climb(const Problem& p, const LinePart& part, int steps, State& at) {
  const double length = part.length.si(), w0 = weight(p, part, 0.0), w1 = weight(p, part, 1.0);
  const bool levels = part.kind == PartKind::Floating && p.in.end == SurfaceEnd::BodyPulledUnder;
  for (double s = 0.0; s < length * (1.0 - 1e-12);) {
    if (levels && at[kPy] <= 0.0) return true;
    const double even = length / steps;
    double ds = std::min(std::clamp(swing_free_step(p, part, w0, at), even / kMostCuts, even), length - s);
    State next = stepped(p, part, w0, w1, s, ds, at);
    if (levels && next[kPy] <= 0.0) {
      double low = 0.0, high = ds;
      for (int i = 0; i < 40; ++i) {
        const double middle = 0.5 * (low + high);
        (stepped(p, part, w0, w1, s, middle, at)[kPy] > 0.0 ? low : high) = middle;
        if (high - low < 1e-3 * even && i > 8) break;
      }
      at = stepped(p, part, w0, w1, s, high, at);
      return true;
    }
    at = next, s += ds;
  }
  return false;
}

int steps_of(PartKind kind, int times) {
  return times * (kind == PartKind::Leader ? 16 : kind == PartKind::Sinking ? 32 : 64);
}

State begun(const Problem& p, double fly_depth) {
  const double u = stream(p, fly_depth) - p.in.line_along.si(), v = -p.in.line_across.si();
  const double drag = 0.5 * p.rho * p.in.fly.towed_drag_area.si() * std::hypot(u, v);
  return {drag * u, drag * v, p.in.fly.weight_in_water.si(), 0.0, fly_depth};
}

Steady shot(const Problem& p, double fly_depth, int times) {
  State at = begun(p, fly_depth);
  Steady out{fly_depth, NAN, NAN, 0.0, 0.0};
  bool first = true;
  for (const LinePart& part : p.in.parts) {
    if (part.kind == PartKind::Floating && p.in.end == SurfaceEnd::ButtAtSurface && !first) break;
    if (part.kind != PartKind::Leader && std::isnan(out.tip_depth)) out.tip_depth = out.butt_depth = at[kY];
    const bool level = climb(p, part, steps_of(part.kind, times), at);
    if (part.kind == PartKind::Sinking) out.butt_depth = at[kY];
    first = false;
    if (level) break;
  }
  if (std::isnan(out.tip_depth)) out.tip_depth = out.butt_depth = at[kY];
  out.end_angle = std::atan2(at[kPy], std::hypot(at[kPx], at[kPz]));
  out.tension = std::hypot(at[kPx], at[kPz], at[kPy]);
  out.fly_depth = at[kY];  // of the end, until the root is found
  return out;
}

Problem problem(const SteadyCase& in) {
  const WaterProperties water = water_at(in.temperature);
  return {in, water.density.si(), water.viscosity.si()};
}

}  // namespace

double end_depth(const SteadyCase& in, double fly_depth, int times) {
  return shot(problem(in), fly_depth, times).fly_depth;
}

std::optional<Steady> steady(const SteadyCase& in, int times) {
  const Problem p = problem(in);
  double low = 0.0, high = 0.0;
  for (const LinePart& part : in.parts) high += part.length.si();
  double at_low = shot(p, low, times).fly_depth, at_high = shot(p, high, times).fly_depth;
  if (at_low > kClose || at_high < -kClose) return std::nullopt;
  int side = 0;
  for (int i = 0; i < 200; ++i) {
    const double at = at_high == at_low ? 0.5 * (low + high) : (low * at_high - high * at_low) / (at_high - at_low);
    Steady found = shot(p, at, times);
    const double off = found.fly_depth;
    found.fly_depth = at;
    if (std::abs(off) < kClose) return found;
    if (off < 0.0) {
      low = at, at_low = off;
      if (side == -1) at_high *= 0.5;
      side = -1;
    } else {
      high = at, at_high = off;
      if (side == 1) at_low *= 0.5;
      side = 1;
    }
  }
  return std::nullopt;
}

}  // namespace floatwright::plain
