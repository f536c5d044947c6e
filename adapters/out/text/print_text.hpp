#pragma once
// A Page as plain text, 78 columns, for a terminal, a mail or a line printer. No colour, no control characters.
#include <map>
#include <string>
#include <vector>

#include "engine/wording/page.hpp"

namespace floatwright {

using Sketches = std::map<std::string, std::vector<std::string>>;  // by Figure::name: lines drawn with keys

// A figure that has no sketch is told by its words.
[[nodiscard]] std::string as_text(const Page& page, const Sketches& sketches = {});

}  // namespace floatwright
