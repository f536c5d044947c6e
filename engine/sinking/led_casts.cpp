#include "engine/sinking/led_casts.hpp"

#include <algorithm>
#include <cmath>

#include "engine/sinking/drag_free.hpp"
#include "engine/sinking/even_samples.hpp"
#include "engine/sinking/rigged_line.hpp"
#include "engine/sinking/stream.hpp"

namespace floatwright {
namespace {

constexpr Length kOverBed = metres(0.10);
constexpr Length kThinLinePath = metres(5.0), kSaggingPath = metres(3.0);
constexpr Speed kLedThroughWater = metres_per_second(0.10);
constexpr Duration kLongestLead = seconds(60.0), kLongestDry = seconds(30.0);
constexpr int kDryMends = 2;
constexpr double kDriftPerCast = 1.2;
constexpr double kStep = 0.02;  // s, of the led path

// When the fly, sinking as it goes, has run its path past the rod.
Duration led_time(const Stream& stream, Speed boat, Speed sinks, Length deepest, Length path) {
  double run = 0.0, t = 0.0;  // m, s
  while (run < path.si() && t < kLongestLead.si()) {
    const double depth = std::min(sinks.si() * t, deepest.si());              // m
    const double pace = std::abs(stream.at(metres(depth)).si() - boat.si());  // m/s
    if (depth >= deepest.si())
      return time_within(path - metres(run), metres_per_second(pace), kLongestLead - seconds(t)) + seconds(t);
    run += pace * kStep;
    t += kStep;
  }
  return seconds(std::min(t, kLongestLead.si()));
}

}  // namespace

Measured<CastPath> tight_line_cast(const Tackle& tackle, const Rig& rig, const Technique&, const CastWater& water,
                                   Length, Length rod) {
  const auto hung = hung_weight(tackle.flies[rig.fly], rig.shot, water_at(water.temperature));
  if (!hung) return Absent{hung.why_absent()};
  const Line& line = tackle.lines[rig.line];
  const bool thin = line.kind == LineKind::ThinNymphLine || line.kind == LineKind::MonoRig;
  const Stream stream(water.surface_speed, water.profile, water.depth);
  const Length deepest = std::max(Length{}, water.depth - kOverBed);
  const Speed sinks = hung->towed.sink_rate;
  const Duration end = led_time(stream, water.boat, sinks, deepest, thin ? kThinLinePath : kSaggingPath);
  const auto at = [&](Duration t) {
    const Length fly = std::min(sinks * t, deepest);
    return CastSample{t, fly, Length{}, stream.at(fly), kLedThroughWater, degrees(90.0)};
  };
  return CastPath{even_samples(end, at), end, line.leader ? *line.leader : rod, Length{}};
}

Measured<CastPath> dry_cast(const Tackle& tackle, const Rig& rig, const Technique& technique, const CastWater& water,
                            Length cast) {
  const double held = hold(technique.platform);
  const Speed pace = metres_per_second(in_metres_per_second(water.surface_speed));
  Duration end = std::min(drag_free_time(kDryMends, held, water.surface_speed), kLongestDry);
  if (technique.platform != Platform::Drifting) end = time_within(cast * kDriftPerCast, pace, end);
  const auto at = [&](Duration t) { return CastSample{t, Length{}, Length{}, pace, Speed{}, degrees(90.0)}; };
  return CastPath{even_samples(end, at), end, leader_length(tackle.lines[rig.line], Method::Dry), Length{}};
}

}  // namespace floatwright
