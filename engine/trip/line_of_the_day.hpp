#pragma once
// The line that a picture is drawn of: of the rigs whose line has a shape to solve, the one fished longest on the
// stretch, in the water in which it is fished longest.
#include "engine/trip/stretches.hpp"
#include "engine/trip/water_book.hpp"

namespace floatwright {

[[nodiscard]] std::optional<LineOfTheDay> line_of_the_day(const RiverDay& day, WaterBook& book, const Stretch& stretch,
                                                          const PlannedStretch& planned);

}  // namespace floatwright
