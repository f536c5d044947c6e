#pragma once
// A line cut to a number of characters (Unicode code points, UTF-8), at the last space that fits. A single word that is
// too long is cut between two of its characters, never inside what a reader takes for one: a letter with its accents,
// an emoji made of several. A direction isolated by `typed` is closed again.
#include <string>
#include <string_view>

namespace floatwright {

[[nodiscard]] std::size_t characters(std::string_view text);
[[nodiscard]] std::string cut_at_word(std::string_view text, std::size_t most);

}  // namespace floatwright
