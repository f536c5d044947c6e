#pragma once
// Whether bytes are UTF-8 (RFC 3629: no overlong forms, no surrogates, nothing past U+10FFFF).
#include <cstddef>
#include <optional>
#include <string_view>

namespace floatwright {

// Offset of the first byte that cannot stand where it stands; none when all is well.
[[nodiscard]] std::optional<std::size_t> first_bad_utf8(std::string_view bytes);

// How many bytes the character at `at` takes in well-formed text; 0 when it is not well-formed there.
[[nodiscard]] std::size_t utf8_length(std::string_view bytes, std::size_t at);

}  // namespace floatwright
