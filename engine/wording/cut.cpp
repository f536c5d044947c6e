#include "engine/wording/cut.hpp"

#include <cstdint>

#include "engine/wording/code_point.hpp"

namespace floatwright {
namespace {

constexpr std::uint32_t kIsolate = 0x2068, kEndOfIsolate = 0x2069, kJoiner = 0x200D;
constexpr std::string_view kEndOfIsolateText = "\u2069";

// A byte that is no character counts as one.
CodePoint letter_at(std::string_view text, std::size_t at) { return code_point_at(text, at).value_or(CodePoint{}); }

bool within(std::uint32_t code, std::uint32_t first, std::uint32_t last) { return code >= first && code <= last; }

// Belongs to the character before it: accents, joiner, variation selectors, skin tones, tags (Unicode 15, UAX #29's
// Extend for what people type; scripts with signs of their own before or after a letter are not told apart).
bool goes_on(std::uint32_t code) {
  return code == kJoiner || within(code, 0x0300, 0x036F) || within(code, 0x0591, 0x05BD) ||
         within(code, 0x064B, 0x065F) || within(code, 0x1AB0, 0x1AFF) || within(code, 0x1DC0, 0x1DFF) ||
         within(code, 0x20D0, 0x20FF) || within(code, 0xFE00, 0xFE0F) || within(code, 0xFE20, 0xFE2F) ||
         within(code, 0x1F3FB, 0x1F3FF) || within(code, 0xE0020, 0xE007F);
}

// A flag is two of these.
bool regional(std::uint32_t code) { return within(code, 0x1F1E6, 0x1F1FF); }

struct Cut {
  std::size_t at_space = 0, at_character = 0;  // bytes; 0: none fits
};

Cut cut_within(std::string_view text, std::size_t most) {
  Cut cut;
  std::uint32_t before = 0;
  std::size_t taken = 0, flags = 0;
  for (std::size_t at = 0; at < text.size() && taken <= most; ++taken) {
    const auto [code, bytes] = letter_at(text, at);
    const bool second_of_flag = regional(code) && flags % 2 == 1;
    flags = regional(code) ? flags + 1 : 0;
    if (at > 0 && code == ' ') cut.at_space = at;
    if (at > 0 && !goes_on(code) && before != kJoiner && !second_of_flag) cut.at_character = at;
    before = code;
    at += bytes;
  }
  return cut;
}

bool leaves_open(std::string_view text) {
  bool open = false;
  for (std::size_t at = 0; at < text.size(); at += letter_at(text, at).bytes) {
    const std::uint32_t code = letter_at(text, at).code;
    if (code == kIsolate || code == kEndOfIsolate) open = code == kIsolate;
  }
  return open;
}

std::string without_trailing_marks(std::string_view text) {
  while (!text.empty() && (text.back() == ' ' || text.back() == ',' || text.back() == ';' || text.back() == ':'))
    text.remove_suffix(1);
  return std::string(text);
}

std::string cut_text(std::string_view text, std::size_t most) {
  const Cut cut = cut_within(text, most);
  return without_trailing_marks(text.substr(0, cut.at_space > 0 ? cut.at_space : cut.at_character));
}

}  // namespace

std::size_t characters(std::string_view text) {
  std::size_t count = 0;
  for (std::size_t at = 0; at < text.size(); at += letter_at(text, at).bytes) ++count;
  return count;
}

std::string cut_at_word(std::string_view text, std::size_t most) {
  if (characters(text) <= most) return std::string(text);
  std::string out = cut_text(text, most);
  if (!leaves_open(out)) return out;
  out = cut_text(text, most > 0 ? most - 1 : 0);
  return leaves_open(out) ? out.append(kEndOfIsolateText) : out;
}

}  // namespace floatwright
