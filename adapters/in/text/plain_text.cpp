#include "adapters/in/text/plain_text.hpp"

#include <algorithm>
#include <charconv>
#include <cmath>

namespace floatwright {
std::optional<double> number_in(std::string_view text) {
  double value = 0.0;
  const auto [end, error] = std::from_chars(text.data(), text.data() + text.size(), value);
  if (error != std::errc{} || end != text.data() + text.size() || !std::isfinite(value)) return std::nullopt;
  return value;
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
