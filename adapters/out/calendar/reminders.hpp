#pragma once
// The moments of a float at which a calendar should speak up: where to stop, when a release arrives, when to stop
// fishing for the heat, when those ashore begin to count.
#include <string>
#include <vector>

#include "engine/wording/float_plan_parts.hpp"

namespace floatwright {

struct Reminder {
  Instant at{};      // when it is shown
  std::string text;  // begins with the hour of the thing itself
  bool is_caution = false;  // its text stands among the cautions too
};

// Of the stretch floated, in the order of time; none without one.
[[nodiscard]] std::vector<Reminder> reminders(const Told& told);

}  // namespace floatwright
