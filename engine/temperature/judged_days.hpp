#pragma once
// The days of the judged part: their highest reading as seen in the morning, and whether the hour of water too warm to
// fish was called.
#include <functional>

#include "engine/temperature/curve_band.hpp"
#include "engine/temperature/temperature_report.hpp"

namespace floatwright {

struct DaysAsked {
  const HourlyTemperatures& record;
  std::span<const TunedTemperatureLead> leads;
  Instant from{}, until{};
  std::string time_zone;
};

// Mean of the days' highest reading less that of the curve seen from 06 h: a smooth curve's top is too low.
[[nodiscard]] TemperatureChange maximum_missed(const DaysAsked& asked);

[[nodiscard]] MaximumScore judged_maxima(const DaysAsked& asked, TemperatureChange missed);

// How far the high case stood over the middle one for a forecast made then, to this lead; none: not judged.
using HighBand = std::function<std::optional<TemperatureChange>(Instant origin, Period lead)>;
[[nodiscard]] StopScore judged_stops(const DaysAsked& asked, Temperature stop, int seen_from, bool evening_before,
                                     const HighBand& high);

}  // namespace floatwright
