#include "adapters/out/state/fingerprint.hpp"

#include <gmock/gmock.h>

#include <set>
#include <string>

namespace floatwright {
namespace {

// The check value of FNV-1a for "foobar", from memory of its authors' list.
static_assert(fingerprint("foobar") == 0x85944171f73967e8u);

TEST(FingerprintByWords, IsAnotherForEveryBitAndEveryLength) {
  const std::string bytes = "eleven casts of a sinking tip, and five bytes more";
  std::set<std::uint64_t> seen;
  for (std::size_t length = 0; length <= bytes.size(); ++length) seen.insert(fingerprint_by_words(bytes.substr(0, length)));
  EXPECT_EQ(seen.size(), bytes.size() + 1);
  for (std::size_t bit = 0; bit < 8 * bytes.size(); ++bit) {
    std::string other = bytes;
    other[bit / 8] = static_cast<char>(static_cast<unsigned char>(other[bit / 8]) ^ (1U << (bit % 8)));
    EXPECT_TRUE(seen.insert(fingerprint_by_words(other)).second) << bit;
  }
}

// Two top bits of two words would cancel each other without the fold.
TEST(FingerprintByWords, DoesNotLoseTheTopBitsOfTwoWords) {
  std::string bytes(64, 'x'), other = bytes;
  other[7] = static_cast<char>(other[7] ^ '\x80');
  other[39] = static_cast<char>(other[39] ^ '\x80');
  EXPECT_NE(fingerprint_by_words(bytes), fingerprint_by_words(other));
}

}  // namespace
}  // namespace floatwright
