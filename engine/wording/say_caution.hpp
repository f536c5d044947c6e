#pragma once
// A caution as one sentence or two, with its numbers. It says what was met and what to do, never that anything is safe:
// the law, the agency and the guide on the water decide. A caution that brings its own text is printed as it stands.
#include <string>

#include "engine/trip/day_plan.hpp"
#include "engine/wording/clock.hpp"

namespace floatwright {

struct CautionWords {
  const River& river;
  const LocalClock& clock;
  UnitSystem units = UnitSystem::Us;
  bool brief = false;  // for a sheet that is read in the rain: hours without the expected one, no second sentence
  bool together = false;  // in a list in which one sentence is said of several places: numbers stand with the place
};

// The water waded is deeper, or its depth times speed more, than the limit.
[[nodiscard]] bool beyond_wading(const Caution& caution);
// "stop by 10:20", of a heat stop.
[[nodiscard]] std::string say_stop_by(const Caution& caution, const LocalClock& clock);
// Without the place: "Too fast to wade: 3 ft at 2 1/2 ft/s, ...". The composer puts places together.
[[nodiscard]] std::string say_what(const Caution& caution, const CautionWords& words);
// "Alder Bar, 12:40 (12:00-13:30)"; empty where it holds everywhere all day.
[[nodiscard]] std::string say_where_and_when(const Caution& caution, const CautionWords& words);
// Both, with a colon between.
[[nodiscard]] std::string say(const Caution& caution, const CautionWords& words);

}  // namespace floatwright
