#include "adapters/in/text/plain_text.hpp"
#include "adapters/in/text/printable.hpp"

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

TEST(Printable, SpellsOutWhatATerminalWouldObey) {
  EXPECT_EQ(printable("a\x1b[2Jb\xff"
                      "c"),
            "a\\u001B[2Jb\\xFFc");
}

// Found by the fuzzer: RFC 3629 section 3 has neither overlong forms nor surrogates, and JSON that holds them is none.
TEST(Printable, SpellsOutBytesThatOnlyLookLikeUtf8AndControlsOfTwoBytes) {
  EXPECT_EQ(printable("\xE0\x80\xAF"), "\\xE0\\x80\\xAF");
  EXPECT_EQ(printable("\xED\xA0\x80"), "\\xED\\xA0\\x80");
  EXPECT_EQ(printable("\xC2\x9B" "31m"), "\\u009B31m");
}

TEST(Printable, KeepsWholeSignsAndIsCut) {
  EXPECT_EQ(printable("m\u00b3/s"), "m\u00b3/s");
  EXPECT_EQ(printable(std::string(100, 'x')), std::string(60, 'x') + "...");
}

}  // namespace
}  // namespace floatwright
