#pragma once
// The weather where the river is, as an agency forecasts it or a person typed it. Empty series: not known.
#include <optional>
#include <string>

#include "engine/readings/gauge_record.hpp"

namespace floatwright {

struct Weather {
  std::string station;
  Instant issued{};
  Series<Temperature> air;
  Series<Speed> rain;  // depth in time, holding until the next row
  Series<Speed> wind;  // mean wind, holding until the next row
};

// A row holds until the next, for 6 h at most; the last for as long as the one before it, a lone one for an hour.
inline constexpr Period kWeatherHolds = std::chrono::hours{6};

// The depth of rain from one instant to another; none where no row speaks for any of it.
[[nodiscard]] std::optional<Length> rain_between(const Weather& weather, Instant from, Instant to);
// The wettest 24 h that begin between `from` and `to` (on the hour).
[[nodiscard]] std::optional<Length> wettest_day(const Weather& weather, Instant from, Instant to);

struct WindMet {
  Speed speed;
  Instant at{};
};
// The strongest wind of the rows that hold at any time from `from` to `to`, the first of several alike.
[[nodiscard]] std::optional<WindMet> strongest_wind(const Weather& weather, Instant from, Instant to);
// The part of from..to in which the wind is over `limit`, from the first to the last such hour; none: never.
struct WindyHours {
  Instant from{}, to{};
};
[[nodiscard]] std::optional<WindyHours> hours_windier_than(const Weather& weather, Speed limit, Instant from, Instant to);

}  // namespace floatwright
