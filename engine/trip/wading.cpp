#include "engine/trip/wading.hpp"

#include <algorithm>

#include "engine/trip/bands.hpp"
#include "engine/water/profile.hpp"

namespace floatwright {

WadingLimits wading_limits(const Settings& settings) {
  WadingLimits limits;
  if (settings.wading_limit_m2_s) {
    const DepthTimesSpeed own = DepthTimesSpeed::from_si(*settings.wading_limit_m2_s);
    limits.typed = own < limits.product;
    limits.product = std::min(limits.product, own);
  }
  return limits;
}

WadedLane waded(const Lane& lane) {
  const bool guessed = lane.source == DepthSource::Guessed;
  const Length depth = guessed ? band_with_scatter(lane.depth, lane.sd_ln_depth).high : lane.depth.high;
  const SurfaceSpeed surface = guessed ? band_with_scatter(lane.surface_speed, lane.sd_ln_speed).high : lane.surface_speed.high;
  const MeanSpeed mean = mean_speed(surface, Profile{}, depth);  // whatever the bed: a rough one would allow more
  return {depth, metres_per_second(in_metres_per_second(mean))};
}

bool too_much_to_wade(const Lane& lane, const WadingLimits& limits) {
  const WadedLane there = waded(lane);
  return there.depth > limits.depth || there.product() > limits.product;
}

}  // namespace floatwright
