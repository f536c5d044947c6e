#pragma once
// The day of several boats as one JSON document of the kind "float_plans": what they share, and in `boats` the float plan
// of each with its name, guide and number of anglers. The published schema is config/schemas/plan.schema.json.
#include <string>
#include <vector>

#include "engine/plan_day.hpp"

namespace floatwright {

// At least one boat; all of one river and day.
[[nodiscard]] std::string boats_json(const std::vector<BoatDay>& boats);

}  // namespace floatwright
