#pragma once
// A line over the bed, the same scale both ways: surface, bed, the line from where it leaves the surface to
// the fly, and hatched where the fish take. The depths are written beside it.
#include "adapters/out/figure/drawing.hpp"
#include "engine/wording/float_plan_parts.hpp"

namespace floatwright {

// `width` in points. None where there is no depth or no shape.
[[nodiscard]] std::optional<Drawing> line_picture(const LineOverBed& line, const std::vector<std::string>& heading,
                                                  UnitSystem units, double width);

// The line of the day; none where the float has none.
[[nodiscard]] std::optional<Drawing> line_picture(const Told& told, double width);

}  // namespace floatwright
