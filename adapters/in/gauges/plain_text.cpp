#include "adapters/in/gauges/plain_text.hpp"

#include <algorithm>
#include <charconv>
#include <cmath>

namespace floatwright {
namespace {

constexpr std::size_t kLongestShown = 60;

// Bytes of the UTF-8 sign that starts here, 0 where it is broken. Overlong forms pass: they are only shown.
std::size_t sign_length(std::string_view text) {
  const auto lead = static_cast<unsigned char>(text.front());
  const std::size_t length = lead < 0x80 ? 1 : lead >= 0xF0 ? 4 : lead >= 0xE0 ? 3 : lead >= 0xC2 ? 2 : 0;
  if (length == 0 || length > text.size() || lead > 0xF4) return 0;
  const auto follows = [](char c) { return (static_cast<unsigned char>(c) & 0xC0) == 0x80; };
  return std::all_of(text.begin() + 1, text.begin() + static_cast<std::ptrdiff_t>(length), follows) ? length : 0;
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
    const std::size_t length = sign_length(text);
    const auto lead = static_cast<unsigned char>(text.front());
    const std::string sign{length == 0 || lead < 0x20 || lead == 0x7F ? "?" : text.substr(0, length)};
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

std::string_view trimmed(std::string_view text) {
  const auto from = text.find_first_not_of(" \t\r\n");
  if (from == std::string_view::npos) return {};
  return text.substr(from, text.find_last_not_of(" \t\r\n") - from + 1);
}

std::string lower_case(std::string_view text) {
  std::string out{text};
  for (char& c : out)
    if (c >= 'A' && c <= 'Z') c = static_cast<char>(c - 'A' + 'a');
  return out;
}

}  // namespace floatwright
