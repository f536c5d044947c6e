#pragma once
// Which gauge's temperature a reach may take: the nearest on the stem within 20 km of river, with no dam, no lake and
// no tributary of over a fifth of the flow between (judgement).
#include "engine/readings/gauge_record.hpp"
#include "engine/river/graph.hpp"

namespace floatwright {

inline constexpr Length kFarthestForTemperature = Length::from_si(20000.0);
inline constexpr double kLargeTributary = 0.20;  // of the flow below it

struct TemperatureGauge {
  std::size_t gauge = 0;
  Length away;  // along the river, from the gauge to the middle of the reach; zero where the gauge stands at its end
};

// `usable`: by gauge, whether its curve is known. Absent with what stands in the way of the nearest.
[[nodiscard]] Measured<TemperatureGauge> temperature_gauge(const River& river, const Reach& reach,
                                                           const std::vector<GaugeRecord>& records,
                                                           const std::vector<bool>& usable);

}  // namespace floatwright
