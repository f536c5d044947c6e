#pragma once
// One character (code point) of UTF-8 (RFC 3629, section 4).
#include <cstdint>
#include <optional>
#include <string_view>

namespace floatwright {

struct CodePoint {
  std::uint32_t code = 0;
  std::size_t bytes = 1;
};

// None where the bytes at `at` are no well-formed character.
[[nodiscard]] std::optional<CodePoint> code_point_at(std::string_view text, std::size_t at);

}  // namespace floatwright
