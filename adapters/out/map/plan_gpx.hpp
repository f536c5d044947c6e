#pragma once
// The day's map as GPX 1.1, for a hand-held receiver: one waypoint a place. A place that can't be put on the map is named
// in the description of the file. The schema: http://www.topografix.com/GPX/1/1/gpx.xsd
#include <string>
#include <vector>

#include "engine/plan_day.hpp"

namespace floatwright {

// At least one boat; all of one river and day.
[[nodiscard]] std::string plan_gpx(const std::vector<BoatDay>& boats);
[[nodiscard]] std::string plan_gpx(const DayPlan& plan, const DayInputs& in);

}  // namespace floatwright
