#pragma once
// Where in a text something stands, for a message: "line 3, column 14", both counted from 1, columns in bytes.
#include <cstddef>
#include <string>
#include <string_view>

namespace floatwright {

[[nodiscard]] std::string line_and_column(std::string_view text, std::size_t offset);

}  // namespace floatwright
