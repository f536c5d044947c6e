#pragma once
// Whether one row may be used as a value of its variable, and if not, why not in a few words.
// Ice, equipment and backwater rows are real rows: they are kept for display, only not used.
#include <optional>
#include <string>

#include "engine/readings/reading.hpp"

namespace floatwright {

// A phrase that reads after "39 rows ", such as "marked ice"; none: the row is usable.
[[nodiscard]] std::optional<std::string> why_not_usable(const Reading& row, Variable variable, Instant now);

// "flow", "stage", "water temperature", "turbidity", "air temperature", "rain", "wind".
[[nodiscard]] std::string name_of(Variable variable);

}  // namespace floatwright
