#pragma once
// Lines to think of for one who has typed none: sinking parts by length and rate on the heaviest rod, floating ones on
// the lightest. What is worth asking for is judgement, no source; lengths and rates are those in which lines are commonly
// sold (common practice, no source).
#include "engine/tackle/listed_tackle.hpp"

namespace floatwright {

// The list with such lines added as thought of, but for those of which one is owned already, to a quarter of its length and
// rate. One that holds a line, tip or rod that is not owned is left as it is.
[[nodiscard]] ListedTackle with_usual_lines(const ListedTackle& listed);

}  // namespace floatwright
