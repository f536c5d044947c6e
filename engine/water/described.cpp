#include "engine/water/described.hpp"

#include <algorithm>
#include <cmath>

#include "engine/river/shares.hpp"

namespace floatwright {
namespace {

constexpr double kPoolUnder = 0.18, kRiffleOver = 0.41;  // Froude number

WaterType type_by_froude(double froude) {
  if (froude < kPoolUnder) return WaterType::Pool;
  return froude > kRiffleOver ? WaterType::Riffle : WaterType::Run;
}

}  // namespace

Water water_in(const River& river, const Reach& reach, const Water& typed) {
  Water water = typed;
  for (auto& note : water.notes) note.at_flow = own_flow(river, reach, note.at_flow);
  return water;
}

Water likely_water(const Channel& channel, Discharge flow) {
  const double v = in_metres_per_second(mean_speed(channel, flow));  // m/s
  const double d = in_metres(mean_depth(channel, flow));             // m
  const WaterType type = type_by_froude(v / std::sqrt(kStandardGravity * d));
  const double deeper = type == WaterType::Riffle ? 1.0 : kLaneOverMeanDepth;  // -
  WaterNote note;
  note.at_flow = flow;
  note.depth = metres(deeper * d);
  note.surface_speed = surface_metres_per_second(v / kMeanOverSurface);
  note.source = DepthSource::Guessed;
  return {type, 1.0, {note}};
}

}  // namespace floatwright
