#include "engine/river/picture_text.hpp"

#include <algorithm>
#include <sstream>

namespace floatwright {
namespace {

bool begins_character(char c) { return (static_cast<unsigned char>(c) & 0xC0U) != 0x80U; }

// Bytes that the first `width` characters take.
std::size_t bytes_of(const std::string& text, std::size_t width) {
  std::size_t seen = 0;
  for (std::size_t i = 0; i < text.size(); ++i) {
    if (begins_character(text[i]) && seen++ == width) return i;
  }
  return text.size();
}

std::string padding(const std::string& text, std::size_t width) {
  return std::string(width - std::min(width, columns(text)), ' ');
}

}  // namespace

std::size_t columns(const std::string& text) {
  return static_cast<std::size_t>(std::ranges::count_if(text, begins_character));
}

std::string right_aligned(const std::string& text, std::size_t width) { return padding(text, width) + text; }
std::string left_aligned(const std::string& text, std::size_t width) { return text + padding(text, width); }

std::vector<std::string> wrapped(const std::string& text, std::size_t width) {
  std::vector<std::string> lines{""};
  std::istringstream words(text);
  for (std::string word; words >> word;) {
    const bool fits = lines.back().empty() || columns(lines.back()) + 1 + columns(word) <= width;
    if (!fits) lines.emplace_back();
    if (!lines.back().empty()) lines.back() += ' ';
    lines.back() += word;
    while (columns(lines.back()) > width) {
      const std::size_t cut = bytes_of(lines.back(), width);
      const std::string rest = lines.back().substr(cut);
      lines.back().resize(cut);
      lines.push_back(rest);
    }
  }
  return lines;
}

}  // namespace floatwright
