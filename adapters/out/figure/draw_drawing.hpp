#pragma once
// A drawing put on a sheet or into a picture with cairo.
#include "adapters/out/figure/drawing.hpp"
#include "adapters/out/figure/ink.hpp"

namespace floatwright {

void draw_drawing(Ink& ink, const Drawing& drawing, double left, double top);

}  // namespace floatwright
