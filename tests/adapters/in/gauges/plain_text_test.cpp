#include "adapters/in/gauges/plain_text.hpp"

#include <gmock/gmock.h>

namespace floatwright {
namespace {

TEST(NumberInText, IsReadWhole) {
  EXPECT_EQ(number_in("974"), 974.0);
  EXPECT_EQ(number_in("-0.2"), -0.2);
  EXPECT_EQ(number_in("1.5e3"), 1500.0);
}

TEST(NumberInText, IsNoneForAnythingElse) {
  for (const char* text :
       {"", " 3", "3 ", "+3", "1,5", "12.5cfs", "nan", "inf", "-inf", "1e999", "0x10", "--", "1e", "1 2"})
    EXPECT_FALSE(number_in(text)) << text;
}

TEST(ShownText, HidesWhatATerminalWouldObey) {
  EXPECT_EQ(shown("a\x1b[2Jb\xff"
                  "c"),
            "a?[2Jb?c");
}

// Found by the fuzzer: RFC 3629 section 3 has neither overlong forms nor surrogates, and JSON that holds them is none.
TEST(ShownText, HidesBytesThatOnlyLookLikeUtf8AndControlsOfTwoBytes) {
  EXPECT_EQ(shown("\xE0\x80\xAF"), "???");
  EXPECT_EQ(shown("\xED\xA0\x80"), "???");
  EXPECT_EQ(shown("\xF0\x80\x80\x80"), "????");
  EXPECT_EQ(shown("\xC2\x9B" "31m"), "?31m");
}

TEST(ShownText, KeepsWholeSignsAndIsCut) {
  EXPECT_EQ(shown("m\u00b3/s"), "m\u00b3/s");
  EXPECT_EQ(shown(std::string(100, 'x')), std::string(60, 'x') + "...");
}

}  // namespace
}  // namespace floatwright
