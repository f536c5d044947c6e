#pragma once
// A drawing as SVG 1.1 with real text, to stand inside an HTML page or as a file of its own. `alt` is its title, which a
// screen reader says. No id, script, style sheet or reference to anything outside, so that two fit in one page.
#include <string>

#include "adapters/out/figure/drawing.hpp"

namespace floatwright {

[[nodiscard]] std::string as_svg(const Drawing& drawing, const std::string& alt);

}  // namespace floatwright
