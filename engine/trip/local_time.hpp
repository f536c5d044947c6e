#pragma once
// The river's own clock: IANA zone names, local days (23, 24 or 25 hours long) and times of day on the wall clock.
// An unknown zone name is read as UTC; ask known_zone() first and say so.
#include <chrono>
#include <string>

#include "engine/units/instant.hpp"

namespace floatwright {

[[nodiscard]] bool known_zone(const std::string& zone);

struct LocalDay {
  Instant start{}, end{};  // first instant of the day, first of the next
};
[[nodiscard]] LocalDay local_day(std::chrono::year_month_day day, const std::string& zone);

// The instant at which the wall clock shows `time_of_day` (since midnight; 24 h and more is the next day). An hour that
// comes twice is the first; one that is skipped is the instant of the skip.
[[nodiscard]] Instant at_local(std::chrono::year_month_day day, Duration time_of_day, const std::string& zone);

[[nodiscard]] std::chrono::year_month_day local_date(Instant t, const std::string& zone);
// What the wall clock shows, since midnight.
[[nodiscard]] Duration time_of_day(Instant t, const std::string& zone);

// The day planned: today if the local time is before `day_turns_at`, else tomorrow.
[[nodiscard]] std::chrono::year_month_day default_day(Instant now, const std::string& zone, Duration day_turns_at);

}  // namespace floatwright
