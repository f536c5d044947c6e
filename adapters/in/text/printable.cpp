#include "adapters/in/text/printable.hpp"

#include <fmt/format.h>

#include "adapters/in/text/utf8.hpp"

namespace floatwright {
namespace {

unsigned byte_at(std::string_view text, std::size_t at) { return static_cast<unsigned char>(text[at]); }

// U+0080 to U+009F is C2 80 to C2 9F in UTF-8.
bool is_control(std::string_view text, std::size_t at, std::size_t length) {
  const unsigned byte = byte_at(text, at);
  if (length == 2) return byte == 0xC2 && byte_at(text, at + 1) < 0xA0;
  return length == 1 && (byte < 0x20 || byte == 0x7F);
}

}  // namespace

std::string printable(std::string_view text, std::size_t longest) {
  std::string shown;
  std::size_t characters = 0;
  for (std::size_t at = 0; at < text.size(); ++characters) {
    if (characters == longest) return shown + "...";
    const std::size_t length = utf8_length(text, at);
    if (length == 0) {
      shown += fmt::format("\\x{:02X}", byte_at(text, at));
    } else if (is_control(text, at, length)) {
      shown += fmt::format("\\u{:04X}", byte_at(text, at + length - 1));
    } else {
      shown += text.substr(at, length);
    }
    at += length == 0 ? 1 : length;
  }
  return shown;
}

bool has_control_characters(std::string_view text) {
  for (std::size_t at = 0; at < text.size();) {
    const std::size_t length = utf8_length(text, at);
    if (is_control(text, at, length)) return true;
    at += length == 0 ? 1 : length;
  }
  return false;
}

}  // namespace floatwright
