#include "engine/sinking/led_casts.hpp"

#include <algorithm>
#include <cmath>

#include "engine/sinking/even_samples.hpp"
#include "engine/sinking/rigged_line.hpp"
#include "engine/sinking/stream.hpp"

namespace floatwright {
namespace {

constexpr Length kOverBed = metres(0.10);
constexpr Length kThinLinePath = metres(5.0), kSaggingPath = metres(3.0);
constexpr double kStep = 0.02;  // s, of the led path

// When the fly, sinking as it goes, has run its path past the rod.
Duration led_time(const CastSetting& setting, Speed sinks, Length deepest, Length path) {
  const Duration longest = setting.limits.longest_cast;
  double run = 0.0, t = 0.0;  // m, s
  while (run < path.si() && t < longest.si()) {
    const double depth = std::min(sinks.si() * t, deepest.si());                                    // m
    const double pace = std::abs(setting.water.stream.at(metres(depth)).si() - setting.boat.si());  // m/s
    if (depth >= deepest.si())
      return time_within(path - metres(run), metres_per_second(pace), longest - seconds(t)) + seconds(t);
    run += pace * kStep;
    t += kStep;
  }
  return seconds(std::min(t, longest.si()));
}

}  // namespace

Measured<CastPath> tight_line_cast(const Tackle& tackle, const Rig& rig, const CastSetting& setting) {
  const TabledWater& water = setting.water;
  const auto hung = hung_weight(tackle.flies[rig.fly], rig.shot, water.properties);
  if (!hung) return Absent{hung.why_absent()};
  const Line& line = tackle.lines[rig.line];
  const Length deepest = std::max(Length{}, water.depth - kOverBed);
  const Speed sinks = hung->towed.sink_rate;
  const Duration end = led_time(setting, sinks, deepest, is_thin(line.kind) ? kThinLinePath : kSaggingPath);
  const auto at = [&](Duration t) {
    const Length fly = std::min(sinks * t, deepest);
    return CastSample{t, fly, Length{}, water.stream.at(fly), setting.limits.led_through_water, degrees(90.0)};
  };
  return CastPath{even_samples(end, at), end, line.leader ? *line.leader : setting.rod, Length{}};
}

CastPath dry_cast(const Tackle& tackle, const Rig& rig, const Technique& technique, const CastSetting& setting) {
  const DriftLimits& limits = setting.limits;
  const Line& line = tackle.lines[rig.line];
  const SurfaceSpeed surface = setting.water.surface_speed;
  const Speed pace = metres_per_second(in_metres_per_second(surface));
  const Duration free = drag_free_time(mends(line.kind, Method::Dry, limits), technique.platform, surface, limits);
  Duration end = std::min(free, limits.longest_dry);
  if (technique.platform != Platform::Drifting) end = time_within(setting.cast * limits.casts_of_drift, pace, end);
  const auto at = [&](Duration t) { return CastSample{t, Length{}, Length{}, pace, Speed{}, degrees(90.0)}; };
  return CastPath{even_samples(end, at), end, leader_length(line, Method::Dry), Length{}};
}

}  // namespace floatwright
