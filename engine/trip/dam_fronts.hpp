#pragma once
// A dam's change as it meets a stretch: the front at places inside it, and whether a place is in its hours.
#include <vector>

#include "engine/trip/day_plan.hpp"
#include "engine/trip/timetable.hpp"

namespace floatwright {

[[nodiscard]] inline bool is_rise(const DamFront& front) { return front.after > front.before; }

// A rise is due in the water between two places: after its earliest hour at the upper end, before its latest at the
// lower end, by the fronts told for places in it or, where there is none, the nearest one up and down the river.
// Never above the dam.
[[nodiscard]] bool rise_expected(const RiverDay& day, RiverPlace from, RiverPlace to, Instant t);
// The same for any instant of a stay.
[[nodiscard]] bool rise_expected(const RiverDay& day, RiverPlace from, RiverPlace to, Instant arrive, Instant leave);

// The fronts at places of the stretch whose hours meet the trip's.
[[nodiscard]] std::vector<DamFront> fronts_met(const std::vector<DamFront>& fronts, const Timetable& times);

}  // namespace floatwright
