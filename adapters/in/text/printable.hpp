#pragma once
// Text from a file made fit to be shown in a sentence: control characters written as \u00XX, too long text cut with
// "...". Terminals and mail get nothing that a file could hide in a name.
#include <cstddef>
#include <string>
#include <string_view>

namespace floatwright {

[[nodiscard]] std::string printable(std::string_view text, std::size_t longest = 60);

// Line breaks, escapes and other control characters (C0, DEL, C1): nothing a name or a sentence needs.
[[nodiscard]] bool has_control_characters(std::string_view text);

}  // namespace floatwright
