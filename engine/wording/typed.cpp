#include "engine/wording/typed.hpp"

#include <cstdint>
#include <optional>

namespace floatwright {
namespace {

struct Decoded {
  std::uint32_t code = 0;
  std::size_t bytes = 1;
};

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

// One code point of well-formed UTF-8 (RFC 3629, section 4), or none.
std::optional<Decoded> decode(std::string_view text, std::size_t at) {
  const auto first = static_cast<unsigned char>(text[at]);
  const std::size_t bytes = length_by_first_byte(first);
  if (bytes == 0 || at + bytes > text.size()) return std::nullopt;
  if (bytes == 1) return Decoded{first, 1};
  std::uint32_t code = first & (0xFFU >> (bytes + 1));
  for (std::size_t i = 1; i < bytes; ++i) {
    const auto next = static_cast<unsigned char>(text[at + i]);
    if ((next & 0xC0U) != 0x80U) return std::nullopt;
    code = (code << 6U) | (next & 0x3FU);
  }
  if (!in_range(code, bytes)) return std::nullopt;
  return Decoded{code, bytes};
}

// Controls (Unicode category Cc), line and paragraph separators, and the marks that embed, override or isolate a
// direction of writing; the byte order mark.
bool becomes_space(std::uint32_t code) {
  return code <= 0x20 || (code >= 0x7F && code <= 0x9F) || code == 0x2028 || code == 0x2029 ||
         (code >= 0x202A && code <= 0x202E) || (code >= 0x2066 && code <= 0x2069) || code == 0x200E || code == 0x200F ||
         code == 0xFEFF;
}

void add_space(std::string& out) {
  if (!out.empty() && out.back() != ' ') out += ' ';
}

}  // namespace

std::string typed(std::string_view text) {
  std::string out;
  for (std::size_t at = 0; at < text.size();) {
    const auto decoded = decode(text, at);
    if (!decoded) {
      out += '?';
      ++at;
      continue;
    }
    if (becomes_space(decoded->code)) {
      add_space(out);
    } else {
      out += text.substr(at, decoded->bytes);
    }
    at += decoded->bytes;
  }
  while (!out.empty() && out.back() == ' ') out.pop_back();
  return out;
}

std::string capitalised(std::string text) {
  if (!text.empty() && text.front() >= 'a' && text.front() <= 'z')
    text.front() = static_cast<char>(text.front() - 'a' + 'A');
  return text;
}

std::string without_stop(std::string text) {
  while (!text.empty() && (text.back() == '.' || text.back() == ' ')) text.pop_back();
  return text;
}

}  // namespace floatwright
