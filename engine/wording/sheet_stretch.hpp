#pragma once
// A float cut down to the rows that a wet hand finds on one sheet: of a reach the water fished longest, neighbours on the
// same rig put together, short stops to fish left out. Closed water, portages, stops and lunch always stay, so that with
// many of these there may be more rows than asked for; the last water of a rod stays while anything else can go, so that no
// rod is rigged for nothing that the sheet names.
#include "engine/trip/day_plan.hpp"

namespace floatwright {

struct SheetStretch {
  PlannedStretch stretch;
  std::size_t waters_left_out = 0, reaches_left_out = 0;
  std::size_t techniques_put_together = 0;  // the one fished longer is told for both
};

[[nodiscard]] SheetStretch sheet_stretch(const PlannedStretch& whole, const Tackle& tackle, std::size_t most_rows);

}  // namespace floatwright
