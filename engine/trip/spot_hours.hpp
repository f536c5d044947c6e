#pragma once
// The hours of a day at one place: from the settings' first hour, civil dawn or now to their last hour or sunset, in rows
// that are fished and rows that are kept out, each with its reason. Out are the hours of a closure, those after the heat
// stop, and, where people wade or anchor, those in which a dam's rise may come; where people wade, those in which every
// water is beyond the wading limits in the high case; at other spots those in which the flow is outside the boat's. Water that is not known keeps nobody out: it is told as unknown.
#include "engine/trip/timetable.hpp"

namespace floatwright {

// `launch` and `end` are the first and the last of the hours fished; nobody is afloat, so `off_by` is the end too. No rows
// where the day has no hour left. Ends of rows are even ten minutes: fishing ends before, and begins after, what keeps people out.
[[nodiscard]] Timetable spot_hours(const RiverDay& day, const Passage& spot);

}  // namespace floatwright
