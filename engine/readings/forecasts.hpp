#pragma once
// What is said of days to come: an agency's forecast of a gauge's flow, and of the weather. Of several issues the newest
// that was out by `now`; never a record of what was.
#include <optional>
#include <string>
#include <vector>

#include "engine/readings/gauge_record.hpp"
#include "engine/readings/weather.hpp"

namespace floatwright {

// None where the station has no forecast of a flow.
[[nodiscard]] std::optional<OfficialForecast> official_forecast(const std::string& station,
                                                                const std::vector<GaugeSeries>& all, Instant now);

// Rain is in mm/h in a series and a depth in time (m/s) here. None where the station has none of the three. A series that
// is no forecast (typed, or observed) counts too, behind one that is.
[[nodiscard]] std::optional<Weather> weather(const std::string& station, const std::vector<GaugeSeries>& all, Instant now);

}  // namespace floatwright
