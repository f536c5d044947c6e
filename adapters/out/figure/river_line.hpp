#pragma once
// The river as a line down the page, upstream at the top, true to its miles as far as words have room: gauges, accesses,
// dams, tributaries, side channels and hazards beside it, and the flow that is expected at noon between them.
#include "adapters/out/figure/drawing.hpp"
#include "engine/river_of_day.hpp"

namespace floatwright {

[[nodiscard]] Drawing river_line(const RiverOfDay& river, const DayInputs& in);
[[nodiscard]] std::string river_line_alt(const RiverOfDay& river, const DayInputs& in);

}  // namespace floatwright
