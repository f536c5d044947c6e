#include "engine/sinking/rigged_line.hpp"

#include <algorithm>
#include <cmath>
#include <numbers>

#include "engine/sinking/section.hpp"

namespace floatwright {
namespace {

constexpr double kFlyInWater = 0.6, kShotInWater = 0.91;  // weight in water over weight
constexpr double kTowedShare = 0.25;                      // of the broadside drag area
constexpr Speed kShotSinks = metres_per_second(1.1);
constexpr Density kFloatingLine = kilograms_per_cubic_metre(870.0);
constexpr Density kNylon = kilograms_per_cubic_metre(1140.0);
constexpr Length kLeaderDiameter = millimetres(0.30);
constexpr Length kDefaultBody = millimetres(1.3);  // a number 6 by its standard mass
constexpr Length kLeastOut = metres(2.0), kLeastPart = millimetres(1.0);

// Drag area at which a weight sinks at a rate: W = 1/2 rho CdA Vs^2.
double drag_area(double weight, double rate, double density) { return 2.0 * weight / (density * rate * rate); }

Length body_diameter(const Line& line) {
  const auto mass = standard_mass(line.line_number);
  if (!mass) return kDefaultBody;
  const double per_metre = mass->si() / feet(30.0).si();  // kg/m
  return metres(std::sqrt(4.0 * per_metre / (std::numbers::pi * kFloatingLine.si())));
}

bool sinks_whole(const Line& line) { return line.kind == LineKind::FullSinking; }

}  // namespace

Measured<HungWeight> hung_weight(const FlyClass& fly, Mass shot, const WaterProperties& water) {
  if (!fly.mass) return Absent{"no mass is given for the " + fly.name};
  if (!(fly.sink_rate > Speed{})) return Absent{"no sink rate is given for the " + fly.name};
  const double rho = water.density.si();                                                                      // kg/m3
  const double of_fly = kFlyInWater * fly.mass->si() * kStandardGravity;                                      // N
  const double of_shot = kShotInWater * shot.si() * kStandardGravity;                                         // N
  const double area = drag_area(of_fly, fly.sink_rate.si(), rho) + drag_area(of_shot, kShotSinks.si(), rho);  // m2
  const double rate = std::sqrt(2.0 * (of_fly + of_shot) / (rho * area));                                     // m/s
  return HungWeight{{newtons(of_fly + of_shot), metres_per_second(rate), square_metres(kTowedShare * area)},
                    square_metres(area)};
}

Length leader_length(const Line& line, Method method) {
  if (line.leader) return *line.leader;
  if (sinks_whole(line)) return metres(2.0);
  if (method == Method::Dry) return metres(3.0);
  const bool tipped = line.kind == LineKind::SinkingTip || line.kind == LineKind::ClearTip ||
                      line.kind == LineKind::LoopedHead || line.kind == LineKind::FloatingWithSinkingLeader;
  return tipped ? metres(1.0) : metres(2.7);
}

Measured<RiggedLine> rigged_line(const Tackle& tackle, const Rig& rig, Method method, Length cast) {
  const Line& line = tackle.lines[rig.line];
  const SinkingPart sinking = sinking_part(tackle, rig);
  const Length leader = std::min(leader_length(line, method), cast);
  RiggedLine out;
  out.leader = {PartKind::Leader, leader, kLeaderDiameter, kNylon, {}, {}};
  out.least_out = kLeastOut;
  Length left = cast - leader;
  if (sinking.length > Length{}) {
    if (!(sinking.sink_rate > Speed{})) return Absent{"no sink rate is given for " + line.id};
    const Length part = sinking.whole_line ? left : std::min(sinking.length, left);
    const auto known = sinking_section({sinking.sink_rate, line.sinking_weight, {}}, water_at(celsius(10.0)));
    const Length diameter = known ? known->section.diameter : default_diameter(sinking.sink_rate);
    out.rate_is_optimistic = !known || known->optimistic;
    out.sinking = {PartKind::Sinking, part, diameter, {}, sinking.butt, sinking.end};
    left = left - part;
    if (line.kind == LineKind::LoopedHead) out.least_out = sinking.length + kLeastOut;
  }
  if (!sinking.whole_line) out.floating = {PartKind::Floating, left, body_diameter(line), kFloatingLine, {}, {}};
  return out;
}

std::vector<LinePart> parts_out(const RiggedLine& line, Length out) {
  std::vector<LinePart> parts;
  const auto take = [&](LinePart part, bool whatever_is_left) {
    part.length = whatever_is_left ? out : std::min(part.length, out);
    out = out - part.length;
    if (part.length > kLeastPart) parts.push_back(part);
  };
  take(line.leader, false);
  if (line.sinking) take(*line.sinking, !line.floating);
  if (line.floating) take(*line.floating, true);
  return parts;
}

}  // namespace floatwright
