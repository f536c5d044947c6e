#pragma once
// The line of the day over the bed, the same scale both ways: surface, bed, the line from where it leaves the surface to
// the fly, and hatched where the fish take. The depths are written beside it.
#include "adapters/out/figure/drawing.hpp"
#include "engine/wording/float_plan_parts.hpp"

namespace floatwright {

// None where the float has no line of the day. `width` in points.
[[nodiscard]] std::optional<Drawing> line_picture(const Told& told, double width);

}  // namespace floatwright
