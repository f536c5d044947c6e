#include "engine/sinking/tabled_water.hpp"

#include <cmath>

namespace floatwright {

Measured<TabledWater> tabled_water(Length depth, SurfaceSpeed surface_speed, const Profile& profile,
                                   Temperature temperature) {
  if (!(depth > Length{}) || !std::isfinite(depth.si())) return Absent{"the water has no depth"};
  if (!(surface_speed >= SurfaceSpeed{}) || !std::isfinite(surface_speed.si()))
    return Absent{"the water's speed is below 0"};
  return TabledWater{depth, surface_speed, Stream(surface_speed, profile, depth), water_at(temperature)};
}

}  // namespace floatwright
