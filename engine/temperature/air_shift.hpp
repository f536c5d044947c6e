#pragma once
// What a forecast of the air does to the water: its daily mean takes up a share of the change in the air's. The curve
// of yesterday already holds yesterday's air. Shares untuned: 0.25, in water under 0.5 m deep 0.5 (judgement).
#include "engine/readings/gauge_record.hpp"

namespace floatwright {

inline constexpr double kAirShare = 0.25, kAirShareShallow = 0.5;
inline constexpr Length kShallow = Length::from_si(0.5);

// Mean air of the 24 h about `to` less that of the 24 h about `from`; days that reach over an end of the series are
// moved inside. None of under 24 h of air, or where `from` or `to` lies more than 12 h outside it.
[[nodiscard]] std::optional<TemperatureChange> air_change(const Series<Temperature>& air, Instant from, Instant to);

}  // namespace floatwright
