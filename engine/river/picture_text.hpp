#pragma once
// Columns of plain text: widths counted in characters as people see them (UTF-8 code points), and wrapping at spaces.
#include <cstddef>
#include <string>
#include <vector>

namespace floatwright {

[[nodiscard]] std::size_t columns(const std::string& text);
[[nodiscard]] std::string right_aligned(const std::string& text, std::size_t width);
[[nodiscard]] std::string left_aligned(const std::string& text, std::size_t width);
// Lines of at most `width` columns (1 or more); a word longer than a line is cut. One empty line for an empty text.
[[nodiscard]] std::vector<std::string> wrapped(const std::string& text, std::size_t width);

}  // namespace floatwright
