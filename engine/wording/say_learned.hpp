#pragma once
// What a log taught, in a sentence each. Differences are told finer than depths on a plan: they are means of many.
#include <string>
#include <vector>

#include "engine/learning/learned.hpp"
#include "engine/trip/day_plan.hpp"

namespace floatwright {

// "Cottonwood Bend: 0.4 ft deeper than noted (3 entries), 3.4 ft at 1,800 cfs."; of a place with several waters "Mill run
// bank: ...".
[[nodiscard]] std::string say(const LearnedWater& water, const River& river, UnitSystem units);
// "Drift boat, green: floats 8 % faster than noted (2 floats)."
[[nodiscard]] std::string say(const LearnedPace& pace);

// Of the waters on a stretch, at the hours they are met: "Alder mouth run: 0.4 ft deeper than noted (3 entries)."
[[nodiscard]] std::vector<std::string> say_what_was_met(const std::vector<PlannedReach>& reaches, UnitSystem units);
// "0.4 ft deeper than noted (3 entries)"; "as deep as noted (2 entries)". Empty where nothing was met.
[[nodiscard]] std::string say_deeper(const Correction& depth, Length now, UnitSystem units);
[[nodiscard]] std::string say_faster(const Correction& speed, SurfaceSpeed now, UnitSystem units);

}  // namespace floatwright
