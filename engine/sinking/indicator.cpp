#include "engine/sinking/indicator.hpp"

#include <algorithm>
#include <array>
#include <cmath>

#include "engine/sinking/cylinder_drag.hpp"
#include "engine/sinking/even_samples.hpp"
#include "engine/sinking/stream.hpp"

namespace floatwright {
namespace {

// Judgement.
constexpr Length kOverBed = metres(0.10), kHalfFoot = feet(0.5), kLeaderDiameter = millimetres(0.20),
                 kOverRod = metres(1.0);
constexpr double kMostDepths = 1.5;
constexpr std::size_t kPieces = 10;
constexpr int kRounds = 30, kTries = 20, kLeaderRounds = 8;
constexpr double kSpeedWithin = 1e-4;  // m/s

using Depths = std::array<double, kPieces + 1>;  // m, from the fly up to the indicator

struct Hanging {
  double weight;    // N
  double fly_drag;  // kg/m, 1/2 rho CdA
  double piece;     // m
  NormalDrag leader;
};

// Of the water at the fly and then at the middle of each piece, m/s.
using Speeds = std::array<double, kPieces + 1>;
Speeds water_along(const Depths& depth, const Stream& stream) {
  Speeds water{stream.at(metres(depth[0])).si()};
  for (std::size_t i = 0; i < kPieces; ++i) water[i + 1] = stream.at(metres(0.5 * (depth[i] + depth[i + 1]))).si();
  return water;
}

// Drag on all below each joint, water slower than the indicator pulling back; the last is on the whole.
Depths drag_below(const Hanging& hanging, const Speeds& water, double indicator) {
  Depths drag{};
  const double lag = indicator - water[0];              // m/s
  double sum = hanging.fly_drag * lag * std::abs(lag);  // N
  for (std::size_t i = 0; i < kPieces; ++i) {
    drag[i] = sum;
    const double du = indicator - water[i + 1];  // m/s
    sum += std::copysign(hanging.leader.at(metres_per_second(std::abs(du))).si() * hanging.piece, du);
  }
  drag[kPieces] = sum;
  return drag;
}

// The speed at which the whole has no net drag: between the bed's water and the surface's. By false position, the side
// that stays put counting half (the Illinois rule).
double free_speed(const Hanging& hanging, const Speeds& water, double guess, const Stream& stream) {
  const auto pull = [&](double speed) { return drag_below(hanging, water, speed)[kPieces]; };  // N
  double slow = 0.0, fast = stream.at_surface().si();                                                  // m/s
  double slow_pull = pull(slow), fast_pull = pull(fast), at = guess;
  bool was_slow = false, was_fast = false;
  for (int i = 0; i < kTries && fast - slow > kSpeedWithin; ++i) {
    const double here = pull(at);
    if (here < 0.0) {
      slow = at, slow_pull = here;
      if (was_slow) fast_pull *= 0.5;
    } else {
      fast = at, fast_pull = here;
      if (was_fast) slow_pull *= 0.5;
    }
    was_slow = here < 0.0, was_fast = !was_slow;
    if (slow_pull == fast_pull) break;
    const double next = slow + (fast - slow) * slow_pull / (slow_pull - fast_pull);
    if (std::abs(next - at) < kSpeedWithin) return next;
    at = next;
  }
  return at;
}

// Depths of the joints from the drag below each: tan(beta) = H/V.
Depths hung_depths(const Hanging& hanging, const Depths& drag) {
  Depths depth{};
  for (std::size_t i = kPieces; i-- > 0;) {
    const double h = 0.5 * (drag[i] + (i + 1 < kPieces ? drag[i + 1] : drag[i]));  // N
    depth[i] = depth[i + 1] + hanging.piece * hanging.weight / std::sqrt(h * h + hanging.weight * hanging.weight);
  }
  return depth;
}

struct Drifting {
  Depths depth;
  double speed;  // m/s
};

Drifting drifting_in(const Stream& stream, Length leader, const HungWeight& hung, const WaterProperties& properties) {
  const Hanging hanging{hung.towed.weight_in_water.si(),
                        0.5 * properties.density.si() * hung.towed.towed_drag_area.si(), leader.si() / kPieces,
                        NormalDrag(kLeaderDiameter, properties)};
  Depths depth{};
  for (std::size_t i = 0; i <= kPieces; ++i) depth[i] = hanging.piece * static_cast<double>(kPieces - i);
  double speed = 0.9 * stream.at_surface().si();  // m/s
  for (int round = 0; round < kRounds; ++round) {
    const Speeds water = water_along(depth, stream);
    speed = free_speed(hanging, water, speed, stream);
    const Depths next = hung_depths(hanging, drag_below(hanging, water, speed));
    const bool settled = std::abs(next[0] - depth[0]) < 5e-4;
    // Half the way: a deeper fly is in slower water, is dragged more and would swing up and down for ever.
    for (std::size_t i = 0; i <= kPieces; ++i) depth[i] = 0.5 * (depth[i] + next[i]);
    if (settled) break;
  }
  return {depth, speed};
}

IndicatorDrift drift_in(const Stream& stream, Length leader, const HungWeight& hung, const WaterProperties& properties) {
  const Drifting drifting = drifting_in(stream, leader, hung, properties);
  return {metres(drifting.depth[0]), metres_per_second(drifting.speed)};
}

double rounded_down(double length) { return std::floor(length / kHalfFoot.si() + 1e-9) * kHalfFoot.si(); }

Length leader_in(const Stream& stream, const HungWeight& hung, const WaterProperties& properties, Length depth,
                 Length rod) {
  const double wanted = std::max(kHalfFoot.si(), (depth - kOverBed).si());        // m
  const double most = std::min(kMostDepths * depth.si(), (rod + kOverRod).si());  // m
  double length = std::min(wanted, most);  // m; a leader hangs no deeper than it is long
  for (int i = 0; i < kLeaderRounds && length < most; ++i) {
    const double hangs = drift_in(stream, metres(length), hung, properties).fly_depth.si();
    if (hangs >= wanted - 0.005) break;
    length = std::min(most, length * wanted / hangs);
  }
  return metres(std::max(kHalfFoot.si(), rounded_down(length)));
}

// A drifting boat goes along; past another one it drifts until it drags or is out of reach.
Duration longest_drift(LineKind kind, Platform platform, Speed indicator, const CastSetting& setting) {
  const DriftLimits& limits = setting.limits;
  if (platform == Platform::Drifting) return std::min(limits.longest_indicator, limits.longest_cast);
  const double count = mends(kind, Method::Indicator, limits);
  const Duration free = drag_free_time(count, platform, setting.water.surface_speed, limits);
  return time_within(setting.cast * limits.casts_of_drift, indicator, free);
}

}  // namespace

IndicatorDrift indicator_drift(Length leader, const HungWeight& hung, const CastWater& water) {
  return drift_in(Stream(water.surface_speed, water.profile, water.depth), leader, hung, water_at(water.temperature));
}

std::vector<Length> indicator_joints(Length leader, const HungWeight& hung, const TabledWater& water) {
  std::vector<Length> joints;
  for (const double depth : drifting_in(water.stream, leader, hung, water.properties).depth) joints.push_back(metres(depth));
  return joints;
}

Length indicator_leader(const HungWeight& hung, const CastWater& water, Length rod) {
  return leader_in(Stream(water.surface_speed, water.profile, water.depth), hung, water_at(water.temperature),
                   water.depth, rod);
}

Measured<CastPath> indicator_cast(const Tackle& tackle, const Rig& rig, const Technique& technique,
                                  const CastSetting& setting) {
  const TabledWater& water = setting.water;
  const auto hung = hung_weight(tackle.flies[rig.fly], rig.shot, water.properties);
  if (!hung) return Absent{hung.why_absent()};
  const Stream& stream = water.stream;
  const auto& set = setting.leader_set;
  const Length leader = set ? set->length : leader_in(stream, *hung, water.properties, water.depth, setting.rod);
  const IndicatorDrift drift = set && set->drift ? *set->drift : drift_in(stream, leader, *hung, water.properties);
  const Duration end = longest_drift(tackle.lines[rig.line].kind, technique.platform, drift.indicator, setting);
  const auto at = [&](Duration t) {
    const Length fly = std::min(hung->towed.sink_rate * t, drift.fly_depth);
    const double lag = std::abs(drift.indicator.si() - stream.at(fly).si());  // m/s
    return CastSample{t, fly, Length{}, drift.indicator, metres_per_second(lag), degrees(90.0)};
  };
  return CastPath{even_samples(end, at), end, leader, leader, drift.fly_depth};
}

}  // namespace floatwright
