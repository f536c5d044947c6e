#pragma once
// Limb regression: y(t + lead) - y(t) by what the last days did, rise and fall apart, y = ln Q.
#include <array>

#include "engine/forecast/forecast_origin.hpp"
#include "engine/forecast/tuned_flow.hpp"

namespace floatwright {

using LimbTerms = std::array<double, kLimbTerms>;
// In the order of kLimbTermWords.
enum LimbTerm : std::size_t {
  Rise6h,
  Fall6h,
  Rise24h,
  Fall24h,
  Level,
  Wave,
  LikeDay,
  WeekAgo,
  Days14,
  RoutedRise,
  RoutedFall
};

[[nodiscard]] LimbTerms limb_terms(const ForecastOrigin& origin, Discharge median, Period lead);

// Towards which the regression is shrunk: the untuned fall, wave and same hours, and half of what the gauge above has
// shown as far as the lag reaches into the lead. `lag` 0: no gauge above.
[[nodiscard]] LimbTerms untuned_limb(bool below_dam, Period lag, Period lead);

}  // namespace floatwright
