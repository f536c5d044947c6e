#pragma once
// The JSON plan: SI with the unit in the key, bands as {"low","best","high"}, instants in UTC with "local" beside where
// people read them. The published schema is config/schemas/plan.schema.json.
#include <string>

#include "engine/plan_day.hpp"

namespace floatwright {

[[nodiscard]] std::string plan_json(const DayPlan& plan, const DayInputs& in);

}  // namespace floatwright
