#pragma once
// A line over the bed drawn with keys, for a terminal: a cell is taken to be twice as high as wide, so that slopes are
// near true; where a line is long and the water shallow the height is drawn larger and the sketch says so.
#include <string>
#include <vector>

#include "engine/choice/line_over_bed.hpp"
#include "engine/trip/settings.hpp"

namespace floatwright {

// Lines of at most 78 columns, no more than 14 of them. Empty where there is no depth or no shape.
[[nodiscard]] std::vector<std::string> line_sketch(const LineOverBed& line, UnitSystem units);

}  // namespace floatwright
