#pragma once
// One vertical of water made ready for casts: its profile tabled, its density and viscosity read. Made once for all the
// rigs that are fished in it.
#include "engine/sinking/stream.hpp"
#include "engine/sinking/water_properties.hpp"
#include "engine/units/measured.hpp"

namespace floatwright {

struct TabledWater {
  Length depth;
  SurfaceSpeed surface_speed;
  Stream stream;
  WaterProperties properties;
};

// Absent where there is no depth or the speed is below 0.
[[nodiscard]] Measured<TabledWater> tabled_water(Length depth, SurfaceSpeed surface_speed, const Profile& profile,
                                                 Temperature temperature);

}  // namespace floatwright
