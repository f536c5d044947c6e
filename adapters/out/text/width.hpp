#pragma once
// Columns that UTF-8 text takes on a terminal or a line printer: combining marks none, East Asian wide letters two, all
// others one. After the ranges of Unicode Standard Annex 11 (wide and fullwidth), the common blocks only.
#include <cstddef>
#include <string>
#include <string_view>
#include <vector>

namespace floatwright {

[[nodiscard]] std::size_t columns(std::string_view text);
// With spaces up to `width` columns.
[[nodiscard]] std::string padded(std::string text, std::size_t width);
// The first word of `text`, with what is not parted from it at a line's end: a number and its unit or half ("8 1/2
// ft"), "at" and "mile" before a number.
[[nodiscard]] std::string_view first_piece(std::string_view text);
// As it stands where it fits; else broken between such pieces into lines of at most `width` columns; a word longer than
// that is cut. At least one line. Leading spaces stay, so that an indented cell keeps its indent.
[[nodiscard]] std::vector<std::string> wrapped(std::string_view text, std::size_t width);

}  // namespace floatwright
