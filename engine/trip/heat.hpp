#pragma once
// Warm water and trout: the limits by fish, and the hour at which fishing stops. The stop is judged by the HIGH case in the
// reach then floated, less half an hour, and there is no resumption in the evening: the peak is late and fish are spent.
// Basis: 58 of 100 released fish were caught again under 21 C, 35 of 100 at 21 to 23 C (study of Idaho cutthroat); state
// advisories at 67 to 68 F; 60 F where there are bull trout (Montana administrative rule). Limits typed by a person
// count only where they are lower.
#include <optional>
#include <string>
#include <vector>

#include "engine/trip/day_plan.hpp"
#include "engine/trip/timetable.hpp"

namespace floatwright {

struct HeatLimits {
  Temperature caution = fahrenheit(67.0), stop = fahrenheit(70.0);
  std::string fish{};  // whose limits these are: "trout", "cutthroat", "bull trout"
  bool caution_typed = false, stop_typed = false;  // a person's own, lower than those
};
[[nodiscard]] HeatLimits heat_limits(const River& river, const Settings& settings);

struct HeatMet {
  Temperature temperature{};  // of the high case
  Instant at{};
  std::string where{};
};
struct HeatOfTrip {
  std::optional<HeatMet> caution{};        // first met on the trip
  std::vector<HeatMet> stops{};            // first met at each place, in that order; the first one stops the fishing
  std::optional<HeatMet> highest{};        // none: temperature unknown all along
  std::optional<Instant> stop_by{};        // half an hour before the stop is met
  bool unknown_somewhere = false;
};
[[nodiscard]] HeatOfTrip heat_of(const RiverDay& day, const Timetable& times, const HeatLimits& limits);

// Broken when fishing would have to stop before it begins.
[[nodiscard]] std::optional<BrokenLimit> heat_limit(const HeatOfTrip& heat, const HeatLimits& limits, Instant launch);

// A heat stop for each place that grows too warm, all by the hour of the first: a lower limit names no place less.
void add_heat_cautions(const RiverDay& day, const HeatOfTrip& heat, const HeatLimits& limits, std::vector<Caution>& cautions);

// For a page: of several heat stops the first place, since nobody fishes after it.
[[nodiscard]] std::vector<Caution> with_first_heat_stop(std::vector<Caution> cautions);

}  // namespace floatwright
