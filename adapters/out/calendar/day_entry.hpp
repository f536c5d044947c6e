#pragma once
// What stands in a calendar entry: its title, where it is, and its text: what to rig, the stops, what to watch, what is
// left ashore. The words come from engine/wording; only their order is decided here.
#include <string>

#include "engine/wording/float_plan_parts.hpp"

namespace floatwright {

struct DayEntry {
  std::string title;     // "Lantern River: Mill Bridge -> Old Ferry"
  std::string location;  // "Mill Bridge (mile 40.2) to Old Ferry (mile 28.6)"; empty without a float
  std::string text;      // lines parted by '\n'
};

[[nodiscard]] DayEntry day_entry(const Told& told);

}  // namespace floatwright
