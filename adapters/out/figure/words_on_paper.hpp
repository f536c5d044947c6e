#pragma once
// Words of a picture before they are drawn: their size, about how wide they come out, and lines broken to a width.
#include <string>
#include <vector>

namespace floatwright {

[[nodiscard]] double words_size(double drawing_width);                     // points: 13, in a narrow drawing 11
[[nodiscard]] double line_of_words(double size);                           // from base line to base line
[[nodiscard]] double about_width(const std::string& words, double size);   // rather too wide than too narrow
// Broken at blanks; a word wider than that keeps its line.
[[nodiscard]] std::vector<std::string> broken(const std::string& words, double width, double size);

}  // namespace floatwright
