#pragma once
// A page's table as aligned columns. Columns that hold sentences are narrowed, widest first, until the table fits;
// their cells then go on in the next line.
#include <string>
#include <vector>

#include "engine/wording/page.hpp"

namespace floatwright {

// Lines of at most `width` columns, without line ends.
[[nodiscard]] std::vector<std::string> table_lines(const PageTable& table, std::size_t width);

// A rod's mark drawn with keys: square [#], triangle /^\, circle (O), diamond <#>, cross [X]; any other by its name.
[[nodiscard]] std::string drawn_mark(const std::string& name);

}  // namespace floatwright
