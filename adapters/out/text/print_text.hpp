#pragma once
// A Page as plain text, 78 columns, for a terminal, a mail or a line printer. No colour, no control characters.
#include <string>

#include "engine/wording/page.hpp"

namespace floatwright {

[[nodiscard]] std::string as_text(const Page& page);

}  // namespace floatwright
