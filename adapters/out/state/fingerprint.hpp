#pragma once
// FNV-1a, 64 bits (Fowler, Noll, Vo): the same number for the same bytes on every machine.
#include <cstdint>
#include <cstring>
#include <string_view>

namespace floatwright {

[[nodiscard]] constexpr std::uint64_t fingerprint(std::string_view bytes) {
  std::uint64_t hash = 0xcbf29ce484222325u;
  for (const char c : bytes) hash = (hash ^ static_cast<unsigned char>(c)) * 0x100000001b3u;
  return hash;
}

// For megabytes: eight bytes at a time, folded so that no bit of a word is lost to the next ones, the rest by byte. Of one
// byte order; not FNV-1a's number.
[[nodiscard]] inline std::uint64_t fingerprint_by_words(std::string_view bytes) {
  std::uint64_t hash = 0xcbf29ce484222325u, word = 0;
  for (; bytes.size() >= sizeof word; bytes.remove_prefix(sizeof word)) {
    std::memcpy(&word, bytes.data(), sizeof word);
    hash = (hash ^ word) * 0x100000001b3u;
    hash ^= hash >> 32;
  }
  return hash ^ fingerprint(bytes);
}

}  // namespace floatwright
