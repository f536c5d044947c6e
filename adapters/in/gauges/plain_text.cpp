#include "adapters/in/gauges/plain_text.hpp"

#include <algorithm>
#include <charconv>
#include <cmath>

#include "adapters/in/files/utf8.hpp"

namespace floatwright {
namespace {

constexpr std::size_t kLongestShown = 60;

// Of one sign: C0, DEL and C1 (U+0080 to U+009F), which terminals obey as they obey ESC.
bool is_control(std::string_view sign) {
  const auto byte = [&](std::size_t i) { return static_cast<unsigned char>(sign[i]); };
  return byte(0) < 0x20 || byte(0) == 0x7F || (byte(0) == 0xC2 && byte(1) < 0xA0);
}

}  // namespace

std::optional<double> number_in(std::string_view text) {
  double value = 0.0;
  const auto [end, error] = std::from_chars(text.data(), text.data() + text.size(), value);
  if (error != std::errc{} || end != text.data() + text.size() || !std::isfinite(value)) return std::nullopt;
  return value;
}

std::string shown(std::string_view text) {
  std::string out;
  while (!text.empty()) {
    const std::size_t length = utf8_length(text, 0);
    const std::string sign{length == 0 || is_control(text.substr(0, length)) ? "?" : text.substr(0, length)};
    if (out.size() + sign.size() > kLongestShown) return out + "...";
    out += sign;
    text.remove_prefix(std::max<std::size_t>(length, 1));
  }
  return out;
}

bool stands_near_an_end(std::string_view text, std::string_view word) {
  constexpr std::size_t kNear = 16 * 1024;
  if (text.substr(0, kNear).find(word) != std::string_view::npos) return true;
  return text.size() > kNear && text.substr(text.size() - kNear).find(word) != std::string_view::npos;
}

std::string percent_encoded(std::string_view text) {
  constexpr std::string_view kUnreservedSigns = "-._~", kHex = "0123456789ABCDEF";
  std::string out;
  for (const char c : text) {
    const bool letter_or_digit = (c >= 'a' && c <= 'z') || (c >= 'A' && c <= 'Z') || (c >= '0' && c <= '9');
    if (letter_or_digit || kUnreservedSigns.find(c) != std::string_view::npos) {
      out += c;
    } else {
      const auto byte = static_cast<unsigned char>(c);
      out += '%';
      out += kHex[byte >> 4];
      out += kHex[byte & 15];
    }
  }
  return out;
}

std::string without_controls(std::string text) {
  std::erase_if(text, [](char c) { return static_cast<unsigned char>(c) < 0x20 || c == 0x7F; });
  return text;
}

std::string_view trimmed(std::string_view text) {
  const auto is_blank = [](char c) { return c == ' ' || c == '\t' || c == '\r' || c == '\n'; };
  while (!text.empty() && is_blank(text.front())) text.remove_prefix(1);
  while (!text.empty() && is_blank(text.back())) text.remove_suffix(1);
  return text;
}

std::string lower_case(std::string_view text) {
  std::string out{text};
  for (char& c : out)
    if (c >= 'A' && c <= 'Z') c = static_cast<char>(c - 'A' + 'a');
  return out;
}

}  // namespace floatwright
