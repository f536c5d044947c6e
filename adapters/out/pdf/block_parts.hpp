#pragma once
// Each kind of block of a page laid out on a sheet.
#include "adapters/out/figure/drawing.hpp"
#include "adapters/out/pdf/part.hpp"
#include "engine/wording/page.hpp"

namespace floatwright {

// A figure that has no drawing is left out: its words are told by the rest of the page.
[[nodiscard]] std::vector<Part> parts_of(const Page& page, const Drawings& drawings, const PrintedArea& area, const Ink& ink);

}  // namespace floatwright
