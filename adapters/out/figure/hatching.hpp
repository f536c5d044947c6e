#pragma once
// The slanted lines that fill an area, cut to its outline: what a pencil would draw. Even-odd rule, lines rising to the
// right at 45 degrees.
#include "adapters/out/figure/drawing.hpp"

namespace floatwright {

[[nodiscard]] std::vector<Stroke> hatching(const HatchedArea& area);

}  // namespace floatwright
