#pragma once
// FNV-1a, 64 bits (Fowler, Noll, Vo): the same number for the same bytes on every machine.
#include <cstdint>
#include <string_view>

namespace floatwright {

[[nodiscard]] constexpr std::uint64_t fingerprint(std::string_view bytes) {
  std::uint64_t hash = 0xcbf29ce484222325u;
  for (const char c : bytes) hash = (hash ^ static_cast<unsigned char>(c)) * 0x100000001b3u;
  return hash;
}

}  // namespace floatwright
