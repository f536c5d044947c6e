#include "engine/wording/typed.hpp"

#include <cstdint>

#include "engine/wording/code_point.hpp"

namespace floatwright {
namespace {

constexpr std::string_view kIsolate = "\u2068", kEndOfIsolate = "\u2069";

// Controls (Unicode category Cc), line and paragraph separators, and the marks that embed, override or isolate a
// direction of writing; the byte order mark.
bool becomes_space(std::uint32_t code) {
  return code <= 0x20 || (code >= 0x7F && code <= 0x9F) || code == 0x2028 || code == 0x2029 ||
         (code >= 0x202A && code <= 0x202E) || (code >= 0x2066 && code <= 0x2069) || code == 0x200E || code == 0x200F ||
         code == 0xFEFF;
}

bool within(std::uint32_t code, std::uint32_t first, std::uint32_t last) { return code >= first && code <= last; }

bool is_noncharacter(std::uint32_t code) { return within(code, 0xFDD0, 0xFDEF) || (code & 0xFFFEU) == 0xFFFE; }

// Blocks of Hebrew, Arabic and the like, whose letters are of class R or AL (Unicode 15, DerivedBidiClass).
bool written_from_the_right(std::uint32_t code) {
  return within(code, 0x0590, 0x08FF) || within(code, 0xFB1D, 0xFDFF) || within(code, 0xFE70, 0xFEFE) ||
         within(code, 0x10800, 0x10FFF) || within(code, 0x1E800, 0x1EFFF);
}

void add_space(std::string& out) {
  if (!out.empty() && out.back() != ' ') out += ' ';
}

}  // namespace

std::string typed(std::string_view text) {
  std::string out;
  bool from_the_right = false;
  for (std::size_t at = 0; at < text.size();) {
    const auto letter = code_point_at(text, at);
    if (!letter || is_noncharacter(letter->code)) {
      out += '?';
    } else if (becomes_space(letter->code)) {
      add_space(out);
    } else {
      out += text.substr(at, letter->bytes);
      from_the_right = from_the_right || written_from_the_right(letter->code);
    }
    at += letter ? letter->bytes : 1;
  }
  while (!out.empty() && out.back() == ' ') out.pop_back();
  return from_the_right ? std::string(kIsolate) + out + std::string(kEndOfIsolate) : out;
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
