#pragma once
// A drawing of adapters/out/figure put on a sheet.
#include "adapters/out/figure/drawing.hpp"
#include "adapters/out/pdf/ink.hpp"

namespace floatwright {

void draw_drawing(Ink& ink, const Drawing& drawing, double left, double top);

}  // namespace floatwright
