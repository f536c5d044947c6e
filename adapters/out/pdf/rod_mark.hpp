#pragma once
// The shape on a rod's butt: square, triangle, circle, diamond, cross; any other mark is its name in a box.
#include <string>

#include "adapters/out/figure/ink.hpp"

namespace floatwright {

// Takes `height` and the width that `mark_width` says.
void draw_mark(Ink& ink, const std::string& mark, double x, double y, double height);
[[nodiscard]] double mark_width(const Ink& ink, const std::string& mark, double height);

}  // namespace floatwright
