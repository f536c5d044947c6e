#include "engine/water/floating_speed.hpp"

#include <algorithm>

#include "engine/river/shares.hpp"
#include "engine/water/travelling_water.hpp"

namespace floatwright {
namespace {

// All judgement.
constexpr double kFastThread = 1.25;                // the boat's thread over the water's own speed
constexpr Speed kRowing = metres_per_second(1.0);   // across still water
constexpr Speed kSlowest = metres_per_second(0.1);  // below it nobody waits for the river: they row
constexpr Discharge kSomeFlow = cubic_metres_per_second(30.0);

// By the guide's float time, if one covers the reach.
std::optional<Speed> noted_speed(const River& river, const Reach& reach, const Channel& channel,
                                 const std::optional<Discharge>& flow) {
  if (!reach.note) return std::nullopt;
  const StretchNote& note = river.notes[*reach.note];
  if (!note.float_time || *note.float_time <= Duration{}) return std::nullopt;
  const Speed then = (note.from - note.to) / *note.float_time;
  if (!flow) return then;
  return then * (mean_speed(channel, *flow) / mean_speed(channel, own_flow(river, reach, note.at_flow)));
}

}  // namespace

Speed floating_speed(const River& river, const Reach& reach, std::optional<Discharge> flow, double pace) {
  const Discharge usual = reach.note ? river.notes[*reach.note].at_flow : kSomeFlow;
  const Discharge typical = flow ? *flow : own_flow(river, reach, usual);
  const Channel channel = channel_of(river, reach, typical);
  if (const auto noted = noted_speed(river, reach, channel, flow)) return std::max(pace * *noted, kSlowest);
  if (reach.lake) return kRowing;
  return std::max(metres_per_second(pace * kFastThread * in_metres_per_second(travelling_speed(channel, typical))), kSlowest);
}

}  // namespace floatwright
