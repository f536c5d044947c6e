#include "engine/sinking/rigged_line.hpp"

#include <algorithm>
#include <cmath>
#include <numbers>

#include "engine/sinking/section.hpp"

namespace floatwright {
namespace {

constexpr double kShotInWater = 0.91;  // weight in water over weight
constexpr double kTowedShare = 0.25;   // of the broadside drag area
constexpr Speed kShotSinks = metres_per_second(1.1);
constexpr Density kFloatingLine = kilograms_per_cubic_metre(870.0);
constexpr Density kNylon = kilograms_per_cubic_metre(1140.0);
constexpr Length kLeaderDiameter = millimetres(0.30);
constexpr Length kDefaultBody = millimetres(1.3);  // a number 6 by its standard mass
constexpr Length kLeastOut = metres(2.0), kLeastPart = millimetres(1.0);

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
  const Force of_fly = newtons(kFlyInWater * fly.mass->si() * kStandardGravity);
  const Force of_shot = newtons(kShotInWater * shot.si() * kStandardGravity);
  const Area area =
      sinking_drag_area(of_fly, fly.sink_rate, water.density) + sinking_drag_area(of_shot, kShotSinks, water.density);
  const Force both = of_fly + of_shot;
  const double rate = std::sqrt(2.0 * both.si() / (water.density.si() * area.si()));  // m/s
  return HungWeight{{both, metres_per_second(rate), kTowedShare * area}, area};
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
