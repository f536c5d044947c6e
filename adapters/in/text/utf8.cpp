#include "adapters/in/text/utf8.hpp"

#include <array>
#include <cstdint>
#include <cstring>

namespace floatwright {
namespace {

constexpr std::size_t kAtOnce = 32;

// The second byte is where overlong forms, surrogates and too large values show: Table 3-7 of the Unicode Standard,
// the same as the grammar in RFC 3629 section 4.
bool second_byte_fits(unsigned lead, unsigned second) {
  if (lead == 0xE0) return second >= 0xA0 && second <= 0xBF;
  if (lead == 0xED) return second >= 0x80 && second <= 0x9F;
  if (lead == 0xF0) return second >= 0x90 && second <= 0xBF;
  if (lead == 0xF4) return second >= 0x80 && second <= 0x8F;
  return second >= 0x80 && second <= 0xBF;
}

std::size_t length_by_lead(unsigned lead) {
  if (lead < 0x80) return 1;
  if (lead >= 0xC2 && lead <= 0xDF) return 2;
  if (lead >= 0xE0 && lead <= 0xEF) return 3;
  if (lead >= 0xF0 && lead <= 0xF4) return 4;
  return 0;
}

// Nearly all text that is read here is ASCII, megabytes of it.
bool next_are_ascii(std::string_view bytes, std::size_t at) {
  std::array<std::uint64_t, kAtOnce / 8> words;
  if (bytes.size() - at < kAtOnce) return false;
  std::memcpy(words.data(), bytes.data() + at, kAtOnce);
  return ((words[0] | words[1] | words[2] | words[3]) & 0x8080808080808080u) == 0;
}

}  // namespace

std::size_t utf8_length(std::string_view bytes, std::size_t at) {
  const auto byte = [&](std::size_t i) { return static_cast<unsigned>(static_cast<unsigned char>(bytes[i])); };
  const std::size_t length = length_by_lead(byte(at));
  if (length == 0 || length > bytes.size() - at) return 0;
  if (length > 1 && !second_byte_fits(byte(at), byte(at + 1))) return 0;
  for (std::size_t i = 2; i < length; ++i) {
    if (byte(at + i) < 0x80 || byte(at + i) > 0xBF) return 0;
  }
  return length;
}

std::optional<std::size_t> first_bad_utf8(std::string_view bytes) {
  for (std::size_t at = 0; at < bytes.size();) {
    if (next_are_ascii(bytes, at)) {
      at += kAtOnce;
      continue;
    }
    const std::size_t length = utf8_length(bytes, at);
    if (length == 0) return at;
    at += length;
  }
  return std::nullopt;
}

}  // namespace floatwright
