#pragma once
// What `show river` prints for people: what is believed of each reach of the river through the day, and why.
#include "engine/river_of_day.hpp"
#include "engine/wording/float_plan_parts.hpp"
#include "engine/wording/page.hpp"

namespace floatwright {

[[nodiscard]] Page river_page(const RiverOfDay& river, const DayInputs& in);

// Of one reach: its heading, flow, temperature and waters every three hours, what speaks for each.
void add_believed_reach(Page& page, const Told& told, const BelievedReach& reach);

// "Tailrace", "below Old Ferry", "Cottonwood Channel (side channel)".
[[nodiscard]] std::string name_of(const BelievedReach& reach);

// The flow at noon of the day, best and band: "1,850 cfs (1,700-2,050)"; empty where it is not known.
[[nodiscard]] std::string flow_at_noon(const BelievedReach& reach, UnitSystem units);

}  // namespace floatwright
