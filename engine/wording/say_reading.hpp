#pragma once
// A gauge's newest reading as provenance: what, when, how old, with the service's marks.
#include <string>

#include "engine/readings/gauge_record.hpp"
#include "engine/trip/settings.hpp"
#include "engine/wording/clock.hpp"

namespace floatwright {

[[nodiscard]] std::string say(Variable variable);  // "flow"
[[nodiscard]] std::string say(Mark mark);          // "provisional"
// "1,850 cfs", "not read: <why>"
[[nodiscard]] std::string say_value(const NewestReading& reading, UnitSystem units);
// "read 19:45 the day before, 35 min old, provisional"; the day before `day`.
[[nodiscard]] std::string say_when(const NewestReading& reading, Instant made_at, std::chrono::year_month_day day,
                                   const LocalClock& clock);

}  // namespace floatwright
