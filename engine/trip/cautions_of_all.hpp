#pragma once
// Where nothing is to be floated: what is met on any of the stretches, so that a limit of the person's own that rules all of
// them out takes no caution from the page.
#include <vector>

#include "engine/trip/day_plan.hpp"

namespace floatwright {

// Each thing at each place once, as the worst of the stretches tells it; what is told of a trip and not of a place (cold,
// warm water, wind, the dark, the most that may be waded) once. Heaviest first.
[[nodiscard]] std::vector<Caution> cautions_of_all(const std::vector<PlannedStretch>& stretches);

}  // namespace floatwright
