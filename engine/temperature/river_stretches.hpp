#pragma once
// Which reaches lie between two places of known water temperature, a gauge or a dam's release above and a gauge below,
// and what the water followed down gives them.
#include "engine/temperature/gauge_curve.hpp"
#include "engine/temperature/river_temperatures.hpp"

namespace floatwright {

struct FollowedReach {
  TemperatureSource source;
  TemperatureCurve cases;
};

// By reach; none where nothing can be followed.
[[nodiscard]] std::vector<std::optional<FollowedReach>> followed_reaches(const TemperatureInputs& in,
                                                                         const std::vector<GaugeCurve>& curves);

}  // namespace floatwright
