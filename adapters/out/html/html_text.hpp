#pragma once
// Text on its way into the tree of an HTML page.
#include <string>
#include <string_view>

namespace floatwright {

// Controls become spaces, what is no character a "?", since HTML has neither. Escaping is the tree's work.
[[nodiscard]] std::string characters_only(std::string_view text);

// The same, and spaces inside a measure ("12 1/2 ft") become U+00A0, so that no line ends there.
[[nodiscard]] std::string html_text(std::string_view text);

// "▲ triangle": the shape of a rod's mark with its name, which a reader hears; of a mark without a shape "[name]".
[[nodiscard]] std::string shape_and_word(const std::string& mark);

}  // namespace floatwright
