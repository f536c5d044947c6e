#include "adapters/out/text/width.hpp"

#include <gmock/gmock.h>

namespace floatwright {
namespace {

using ::testing::ElementsAre;

// Widths after Unicode Standard Annex 11, from memory: combining acute accent 0, CJK ideographs 2.
TEST(Columns, CountsLettersNotBytes) {
  EXPECT_EQ(columns("Mill"), 4u);
  EXPECT_EQ(columns("L\u00f8nsdal"), 7u);
  EXPECT_EQ(columns("e\u0301"), 1u);
  EXPECT_EQ(columns("\u5ddd"), 2u);
}

TEST(Columns, CountsAStrayByteAsOneLetterAndDoesNotRunPastTheEnd) { EXPECT_EQ(columns("a\xE5"), 2u); }

TEST(Wrapped, BreaksAtSpaces) { EXPECT_THAT(wrapped("one mend, swing", 9), ElementsAre("one mend,", "swing")); }

TEST(Wrapped, KeepsANumberWithItsHalfAndItsUnit) {
  EXPECT_THAT(wrapped("HOLD, indicator at 8 1/2 ft", 18), ElementsAre("HOLD, indicator", "at 8 1/2 ft"));
  EXPECT_THAT(wrapped("sinking tip 10 ft 4 in/s, 24 seconds", 21),
              ElementsAre("sinking tip 10 ft", "4 in/s, 24 seconds"));
  EXPECT_THAT(wrapped("below mile 28.9 it is", 12), ElementsAre("below", "mile 28.9 it", "is"));
}

TEST(Wrapped, PartsThemWhereTheLineIsTooNarrow) {
  EXPECT_THAT(wrapped("at 8 1/2 ft", 6), ElementsAre("at 8", "1/2 ft"));
}

TEST(Wrapped, CutsAWordThatIsLongerThanTheLine) {
  EXPECT_THAT(wrapped("abcdefgh ij", 4), ElementsAre("abcd", "efgh", "ij"));
}

TEST(Wrapped, KeepsTheIndentOfTheFirstLine) { EXPECT_THAT(wrapped("  bank", 10), ElementsAre("  bank")); }

TEST(Wrapped, GivesOneEmptyLineForNothing) { EXPECT_THAT(wrapped("", 10), ElementsAre("")); }

TEST(Padded, FillsByColumns) { EXPECT_EQ(padded("\u5ddd", 4), "\u5ddd  "); }

}  // namespace
}  // namespace floatwright
