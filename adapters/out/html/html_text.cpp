#include "adapters/out/html/html_text.hpp"

#include <array>
#include <utility>

#include "adapters/out/text/width.hpp"
#include "engine/wording/code_point.hpp"

namespace floatwright {
namespace {

constexpr std::string_view kUnbroken = "\u00A0";

bool is_control(std::uint32_t code) { return code < 0x20 || (code >= 0x7F && code <= 0x9F); }

bool is_noncharacter(std::uint32_t code) {
  return (code >= 0xFDD0 && code <= 0xFDEF) || (code & 0xFFFEU) == 0xFFFE;
}

}  // namespace

std::string characters_only(std::string_view text) {
  std::string out;
  for (std::size_t at = 0; at < text.size();) {
    const auto letter = code_point_at(text, at);
    const std::size_t bytes = letter ? letter->bytes : 1;
    if (!letter || is_noncharacter(letter->code)) {
      out += '?';
    } else if (is_control(letter->code)) {
      out += ' ';
    } else {
      out += text.substr(at, bytes);
    }
    at += bytes;
  }
  return out;
}

std::string html_text(std::string_view text) {
  const std::string clean = characters_only(text);
  std::string out;
  for (std::string_view rest = clean; !rest.empty();) {
    const std::string_view piece = first_piece(rest);
    for (const char c : piece) c == ' ' ? out += kUnbroken : out += c;
    if (piece.size() < rest.size()) out += ' ';
    rest.remove_prefix(std::min(piece.size() + 1, rest.size()));
  }
  return out;
}

std::string shape_and_word(const std::string& mark) {
  constexpr std::array<std::pair<std::string_view, std::string_view>, 5> kShapes{
      {{"square", "■"}, {"triangle", "▲"}, {"circle", "○"}, {"diamond", "◆"}, {"cross", "✕"}}};
  for (const auto& [name, shape] : kShapes)
    if (mark == name) return std::string(shape) + std::string(kUnbroken) + mark;
  return mark.empty() ? "" : "[" + html_text(mark) + "]";
}

}  // namespace floatwright
