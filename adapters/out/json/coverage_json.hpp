#pragma once
// What `season` answers for programs: what each line and set of lines covers. SI with the unit in the key; shares from 0
// to 1. Schema: config/schemas/season.schema.json.
#include <string>

#include "engine/wording/coverage_page.hpp"

namespace floatwright {

[[nodiscard]] std::string coverage_json(const Coverage& found, const CoverageWords& words);

}  // namespace floatwright
