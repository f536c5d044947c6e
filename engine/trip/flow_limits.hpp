#pragma once
// The boat's least and most flow and the hazards' own, held against every reach of a trip while the boat is in it: below
// by the low case, above by the high case. Unknown flow breaks no limit here; it is a caution of its own.
#include <optional>

#include "engine/trip/day_plan.hpp"
#include "engine/trip/timetable.hpp"

namespace floatwright {

// All that are broken, in the order in which they are met; and the first.
[[nodiscard]] std::vector<BrokenLimit> flow_limits(const RiverDay& day, const Timetable& times);
[[nodiscard]] std::optional<BrokenLimit> flow_limit(const RiverDay& day, const Timetable& times);

// The hazards that lie in a passage (its lower end included only when it must be portaged there or the passage ends in
// it), upstream to downstream.
[[nodiscard]] std::vector<const Hazard*> hazards_in(const River& river, RiverPlace from, RiverPlace to);

// By when to be off the water: the latest hour asked for; by the light sunset, or on a day without sun civil dusk
// (absent where it is light all day, or nothing of the sun is known).
[[nodiscard]] Instant at_latest_off(const RiverDay& day);
[[nodiscard]] Measured<Instant> last_light(const SunDay& sun);

}  // namespace floatwright
