#include "engine/sinking/cast_path.hpp"

#include <cmath>
#include <string>

#include "engine/sinking/indicator.hpp"
#include "engine/sinking/led_casts.hpp"
#include "engine/sinking/pulled_cast.hpp"

namespace floatwright {
namespace {

std::string fault_of(const CastWater& water, Length cast) {
  if (!(water.depth > Length{}) || !std::isfinite(water.depth.si())) return "the water has no depth";
  if (!(water.surface_speed >= SurfaceSpeed{}) || !std::isfinite(water.surface_speed.si()))
    return "the water's speed is below 0";
  if (!std::isfinite(water.boat.si())) return "the boat's speed is not a number";
  if (!(cast > Length{}) || !std::isfinite(cast.si())) return "the cast has no length";
  return {};
}

}  // namespace

Measured<CastPath> cast_path(const Tackle& tackle, const Rig& rig, const Technique& technique, const CastWater& water,
                             Length cast, Length rod, std::optional<Length> leader_set) {
  if (std::string fault = fault_of(water, cast); !fault.empty()) return Absent{fault};
  switch (technique.method) {
    case Method::Swing:
    case Method::Strip:
      return pulled_cast(tackle, rig, technique, water, cast);
    case Method::Indicator:
      return indicator_cast(tackle, rig, technique, water, cast, rod, leader_set);
    case Method::TightLine:
      return tight_line_cast(tackle, rig, technique, water, cast, rod);
    case Method::Dry:
      return dry_cast(tackle, rig, technique, water, cast);
  }
  return Absent{"the method is not known"};
}

}  // namespace floatwright
