#include "adapters/out/text/width.hpp"

#include <algorithm>
#include <array>
#include <cstdint>

namespace floatwright {
namespace {

struct Range {
  std::uint32_t first, last;
};

constexpr std::array kNoColumn{
    Range{0x0300, 0x036F}, Range{0x0483, 0x0489}, Range{0x0591, 0x05BD}, Range{0x064B, 0x065F}, Range{0x1AB0, 0x1AFF},
    Range{0x1DC0, 0x1DFF}, Range{0x200B, 0x200F}, Range{0x2066, 0x2069}, Range{0x20D0, 0x20FF}, Range{0xFE00, 0xFE0F}, Range{0xFE20, 0xFE2F}};
constexpr std::array kTwoColumns{Range{0x1100, 0x115F},   Range{0x2E80, 0x303E},  Range{0x3041, 0xA4CF},
                                 Range{0xAC00, 0xD7A3},   Range{0xF900, 0xFAFF},  Range{0xFE30, 0xFE6F},
                                 Range{0xFF00, 0xFF60},   Range{0xFFE0, 0xFFE6},  Range{0x1F300, 0x1F64F},
                                 Range{0x1F900, 0x1F9FF}, Range{0x20000, 0x3FFFD}};

template <std::size_t N>
bool in_any(const std::array<Range, N>& ranges, std::uint32_t code) {
  for (const Range& range : ranges)
    if (code >= range.first && code <= range.last) return true;
  return false;
}

struct Letter {
  std::size_t bytes = 1;
  std::size_t columns = 1;
};

// The text is well-formed UTF-8 (the page's words are); a stray byte counts as one letter.
Letter letter_at(std::string_view text, std::size_t at) {
  const auto first = static_cast<unsigned char>(text[at]);
  std::size_t bytes = first < 0xC0 ? 1 : first < 0xE0 ? 2 : first < 0xF0 ? 3 : 4;
  if (at + bytes > text.size()) bytes = 1;
  if (bytes == 1) return {1, 1};
  std::uint32_t code = first & (0xFFU >> (bytes + 1));
  for (std::size_t i = 1; i < bytes; ++i) code = (code << 6U) | (static_cast<unsigned char>(text[at + i]) & 0x3FU);
  if (in_any(kNoColumn, code)) return {bytes, 0};
  return {bytes, in_any(kTwoColumns, code) ? std::size_t{2} : std::size_t{1}};
}

// Bytes of the longest beginning of `text` that takes at most `width` columns, at least one letter.
std::size_t fitting_bytes(std::string_view text, std::size_t width) {
  std::size_t at = 0, used = 0;
  while (at < text.size()) {
    const Letter letter = letter_at(text, at);
    if (at > 0 && used + letter.columns > width) break;
    used += letter.columns;
    at += letter.bytes;
  }
  return at;
}

constexpr std::array<std::string_view, 18> kFollowANumber{"1/2",  "ft",   "in", "in/s", "ft/s", "ft2/s",
                                                          "cfs",  "F",    "mi", "m",    "cm/s", "m/s",
                                                          "m2/s", "m3/s", "C",  "km",   "%",    "min"};

bool is_digit(char c) { return c >= '0' && c <= '9'; }

bool belong_together(std::string_view word, std::string_view next) {
  if (word.empty() || next.empty()) return false;
  if (is_digit(next.front()) && (word == "at" || word == "mile" || word == "km")) return true;
  if (!is_digit(word.back())) return false;
  while (!next.empty() &&
         (next.back() == ',' || next.back() == '.' || next.back() == ':' || next.back() == ';' || next.back() == ')'))
    next.remove_suffix(1);
  return std::find(kFollowANumber.begin(), kFollowANumber.end(), next) != kFollowANumber.end();
}

std::string_view first_word(std::string_view text) { return text.substr(0, std::min(text.find(' '), text.size())); }

void add_word(std::vector<std::string>& lines, std::string_view word, std::size_t width) {
  const std::size_t gap = lines.back().find_first_not_of(' ') == std::string::npos ? 0 : 1;
  if (columns(lines.back()) + gap + columns(word) <= width) {
    lines.back() += std::string(gap, ' ');
    lines.back() += word;
    return;
  }
  if (gap == 1) lines.emplace_back();
  while (columns(word) > width) {
    const std::size_t cut = fitting_bytes(word, width);
    lines.back() = std::string(word.substr(0, cut));
    lines.emplace_back();
    word.remove_prefix(cut);
  }
  lines.back() += word;
}

}  // namespace

std::size_t columns(std::string_view text) {
  std::size_t total = 0;
  for (std::size_t at = 0; at < text.size();) {
    const Letter letter = letter_at(text, at);
    total += letter.columns;
    at += letter.bytes;
  }
  return total;
}

std::string padded(std::string text, std::size_t width) {
  const std::size_t used = columns(text);
  if (used < width) text.append(width - used, ' ');
  return text;
}

std::string_view first_piece(std::string_view text) {
  std::string_view word = first_word(text);
  std::size_t end = word.size();
  while (end < text.size()) {
    const std::string_view next = first_word(text.substr(end + 1));
    if (!belong_together(word, next)) break;
    word = next;
    end += 1 + next.size();
  }
  return text.substr(0, end);
}

std::vector<std::string> wrapped(std::string_view text, std::size_t width) {
  if (columns(text) <= width) return {std::string(text)};
  const std::size_t indent = std::min(text.find_first_not_of(' '), text.size());
  std::vector<std::string> lines{std::string(std::min(indent, width / 2), ' ')};
  text.remove_prefix(indent);
  while (!text.empty()) {
    std::string_view piece = first_piece(text);
    if (columns(piece) > width) piece = first_word(text);
    if (!piece.empty()) add_word(lines, piece, width);
    text.remove_prefix(std::min(piece.size() + 1, text.size()));
  }
  return lines;
}

}  // namespace floatwright
