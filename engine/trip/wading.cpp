#include "engine/trip/wading.hpp"

#include <algorithm>

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
  const Length depth = lane.depth.high;
  const MeanSpeed mean = mean_speed(lane.surface_speed.high, Profile{}, depth);
  return {depth, metres_per_second(in_metres_per_second(mean))};
}

bool too_much_to_wade(const Lane& lane, const WadingLimits& limits) {
  const WadedLane there = waded(lane);
  return there.depth > limits.depth || there.product() > limits.product;
}

}  // namespace floatwright
