#pragma once
// A drawing as a PNG (W3C PNG, second edition): black on white, not see-through, so that it reads on a dark page too.
// Same drawing, same bytes.
#include <string>

#include "adapters/out/figure/drawing.hpp"
#include "adapters/result.hpp"

namespace floatwright {

// Failure 66 when the font is missing, 74 when cairo could not make the picture, 64 for a size that no picture has.
[[nodiscard]] Result<std::string> as_png(const Drawing& drawing, double pixels_per_point);

}  // namespace floatwright
