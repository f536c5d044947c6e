#pragma once
// What is believed of the river on the day, as JSON after the rules of the plan: SI with the unit in the key, bands,
// instants in UTC with the local ones beside. The published schema is config/schemas/river-of-day.schema.json.
#include <string>

#include "engine/river_of_day.hpp"

namespace floatwright {

[[nodiscard]] std::string river_json(const RiverOfDay& river, const DayInputs& in);

}  // namespace floatwright
