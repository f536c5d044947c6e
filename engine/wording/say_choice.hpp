#pragma once
// Why a rig was chosen for a water, in numbers, and at which flow another one takes over.
#include <string>

#include "engine/trip/day_plan.hpp"

namespace floatwright {

// "fishes 2 1/2 ft down in 4 1/2 ft at 3 1/2 ft/s, 14 seconds of each minute in the zone; next best full sinking line
// 3 in/s, 11 seconds". Empty where nothing was chosen. `of_next` follows the next best line: " (its rod is not in the boat)".
[[nodiscard]] std::string say_reason(const PlannedWater& water, const Tackle& tackle, UnitSystem units,
                                     const std::string& of_next = "");

// "under 1,500 cfs: sinking tip 10 ft 4 in/s"; "same line from 1,200 to 2,900 cfs"; empty where it was not looked for.
[[nodiscard]] std::string say_change(const WaterChoice& choice, const Tackle& tackle, UnitSystem units);

}  // namespace floatwright
