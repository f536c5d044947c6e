#pragma once
// How far from the forecast the flow may come, as ln of the ratio to it: the 10th and 90th percentile by state and
// lead. The defaults are judgement, given at 6, 12, 24 and 36 h; straight lines in ln between, none at lead 0, held
// past 36 h.
#include <optional>

#include "engine/forecast/outlook.hpp"

namespace floatwright {

struct LnBand {
  double low = 0.0, high = 0.0;  // ln ratio to the middle
};

// For DailyWave, Rising, Falling, Steady and Unknown (as Rising, the widest). `after_wave`: the wave's band is kept for
// ten days after the last one.
[[nodiscard]] LnBand default_band(FlowState state, bool after_wave, Duration lead);

// How far a flow that is held is off, as P10 and P90 of what came over it: measured on 16 gauges' daily means
// (docs/accuracy.md), medians, at 1 to 15 days. Straight lines in ln between, none at lead 0, held past 15 days.
[[nodiscard]] LnBand held_band(Duration lead);
// A band known up to kFarthestBand ahead, at `lead`: past that it widens as held_band does.
inline constexpr Period kFarthestBand = std::chrono::hours{48};
[[nodiscard]] LnBand widened(LnBand band, Duration lead);

// `band` about `middle`, its low case not under `least` where there is one, nor over the middle; both ln Q, or
// ln of a ratio to the same flow.
[[nodiscard]] LnBand not_under(std::optional<double> least, LnBand band, double middle);

// Share of the last 6 h's fall that is still to come: 0.40, 0.60, 0.85, 1.00 at 6, 12, 24, 36 h.
[[nodiscard]] double fall_still_to_come(Duration lead);

}  // namespace floatwright
