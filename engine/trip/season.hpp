#pragma once
// Whether a day lies in a season and a time of day in hours, both of which may run over their end (November to March,
// 22:00 to 05:00).
#include "engine/river/river.hpp"

namespace floatwright {

[[nodiscard]] bool in_season(const Season& season, std::chrono::year_month_day day);
[[nodiscard]] bool in_hours(const HoursOfDay& hours, Duration time_of_day);
// Any part of the time from `begin` to `end` (times of day, begin first; no more than a day apart).
[[nodiscard]] bool meet_hours(const HoursOfDay& hours, Duration begin, Duration end);

}  // namespace floatwright
