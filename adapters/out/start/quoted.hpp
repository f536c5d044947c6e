#pragma once
// Text from outside, made fit to stand in a file with comments.
#include <string>

namespace floatwright {

// Without control characters (C0, DEL, C1): a comment ends with its line.
[[nodiscard]] std::string on_one_line(const std::string& text);

// As JSON text in quotes; what is not UTF-8 is replaced.
[[nodiscard]] std::string quoted(const std::string& text);

}  // namespace floatwright
