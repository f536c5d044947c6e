#include "engine/wording/code_point.hpp"

namespace floatwright {
namespace {

std::size_t length_by_first_byte(unsigned char first) {
  if (first < 0x80) return 1;
  if (first >= 0xC2 && first <= 0xDF) return 2;
  if (first >= 0xE0 && first <= 0xEF) return 3;
  if (first >= 0xF0 && first <= 0xF4) return 4;
  return 0;
}

bool in_range(std::uint32_t code, std::size_t bytes) {
  const bool shortest = bytes != 3 || code >= 0x800;
  const bool shortest_of_four = bytes != 4 || (code >= 0x10000 && code <= 0x10FFFF);
  const bool surrogate = code >= 0xD800 && code <= 0xDFFF;
  return shortest && shortest_of_four && !surrogate;
}

}  // namespace

std::optional<CodePoint> code_point_at(std::string_view text, std::size_t at) {
  if (at >= text.size()) return std::nullopt;
  const auto first = static_cast<unsigned char>(text[at]);
  const std::size_t bytes = length_by_first_byte(first);
  if (bytes == 0 || at + bytes > text.size()) return std::nullopt;
  if (bytes == 1) return CodePoint{first, 1};
  std::uint32_t code = first & (0xFFU >> (bytes + 1));
  for (std::size_t i = 1; i < bytes; ++i) {
    const auto next = static_cast<unsigned char>(text[at + i]);
    if ((next & 0xC0U) != 0x80U) return std::nullopt;
    code = (code << 6U) | (next & 0x3FU);
  }
  if (!in_range(code, bytes)) return std::nullopt;
  return CodePoint{code, bytes};
}

}  // namespace floatwright
