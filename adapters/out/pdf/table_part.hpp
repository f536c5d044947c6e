#pragma once
// A page's table with ruled lines and no fills. A row of sentences wraps; the widest column gives way first, down to its
// longest word. Rows that tell what to do at a place (shorter than the head) are kept when the sheet is full.
#include "adapters/out/pdf/part.hpp"
#include "engine/wording/page.hpp"

namespace floatwright {

[[nodiscard]] Part table_part(const PageTable& table, const PrintedArea& area, const Ink& ink);

}  // namespace floatwright
