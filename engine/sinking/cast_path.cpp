#include "engine/sinking/cast_path.hpp"

#include <cmath>
#include <string>
#include <utility>

#include "engine/sinking/indicator.hpp"
#include "engine/sinking/led_casts.hpp"
#include "engine/sinking/pulled_cast.hpp"

namespace floatwright {
namespace {

std::string fault_of(const CastSetting& setting) {
  if (!std::isfinite(setting.boat.si())) return "the boat's speed is not a number";
  if (!(setting.cast > Length{}) || !std::isfinite(setting.cast.si())) return "the cast has no length";
  return {};
}

Measured<CastPath> drifted_cast(const Tackle& tackle, const Rig& rig, const Technique& technique,
                                const CastSetting& setting) {
  switch (technique.method) {
    case Method::Indicator:
      return indicator_cast(tackle, rig, technique, setting);
    case Method::TightLine:
      return tight_line_cast(tackle, rig, setting);
    case Method::Dry:
      return dry_cast(tackle, rig, technique, setting);
    case Method::Swing:
    case Method::Strip:
      break;
  }
  return Absent{"the method is not known"};
}

}  // namespace

SetLeader set_leader(const CastPath& path) {
  if (path.samples.empty()) return {path.indicator_to_fly, std::nullopt};
  return {path.indicator_to_fly, IndicatorDrift{path.hangs, path.samples.front().over_ground}};
}

std::vector<Measured<CastPath>> cast_paths(const Tackle& tackle, const Rig& rig, std::span<const Technique> techniques,
                                           const CastSetting& setting) {
  if (std::string fault = fault_of(setting); !fault.empty())
    return std::vector<Measured<CastPath>>(techniques.size(), Absent{fault});
  if (techniques.empty()) return {};
  if (is_pulled(techniques.front().method)) {
    const WaterAndBoat place{&setting.water, setting.boat};
    return std::move(pulled_casts(tackle, rig, techniques, {setting.cast, setting.limits, {&place, 1}}).front());
  }
  std::vector<Measured<CastPath>> paths;
  for (const Technique& technique : techniques) paths.push_back(drifted_cast(tackle, rig, technique, setting));
  return paths;
}

Measured<CastPath> cast_path(const Tackle& tackle, const Rig& rig, const Technique& technique, const CastWater& water,
                             Length cast, Length rod) {
  const auto tabled = tabled_water(water.depth, water.surface_speed, water.profile, water.temperature);
  if (!tabled) return Absent{tabled.why_absent()};
  const DriftLimits shipped;
  return std::move(cast_paths(tackle, rig, {&technique, 1}, {*tabled, water.boat, cast, rod, shipped, {}}).front());
}

}  // namespace floatwright
