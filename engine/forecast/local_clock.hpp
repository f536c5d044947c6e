#pragma once
// The clock on the wall where the river is: same hour on another day, weekday or weekend, and the season of a date.
#include <string>

#include "engine/river/river.hpp"

namespace floatwright {

// False where the time zone database has no such name; then the functions below count in UTC.
[[nodiscard]] bool zone_known(const std::string& time_zone);

// The instant when the wall clock shows the same hour `days` earlier. An hour that daylight saving skips is the instant
// of the jump, of an hour shown twice the first.
[[nodiscard]] Instant same_hour_before(Instant t, int days, const std::string& time_zone);

// What the clock on the wall shows at `t`, as though it were UTC.
[[nodiscard]] Instant shown_at(Instant t, const std::string& time_zone);
// When the day begins there.
[[nodiscard]] Instant start_of_day(std::chrono::sys_days date, const std::string& time_zone);

// As a sentence tells it: "19:30 on Thu 13 May", with " UTC" where the zone is not known.
[[nodiscard]] std::string hour_and_day(Instant t, const std::string& time_zone);

[[nodiscard]] bool weekend(Instant t, const std::string& time_zone);
[[nodiscard]] bool in_season(const Season& season, Instant t, const std::string& time_zone);

}  // namespace floatwright
