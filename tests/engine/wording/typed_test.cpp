#include "engine/wording/typed.hpp"

#include <gtest/gtest.h>

namespace floatwright {
namespace {

TEST(Typed, LeavesWordsOfAnyAlphabetAlone) { EXPECT_EQ(typed("R\u00edo L\u00f8n \u5ddd"), "R\u00edo L\u00f8n \u5ddd"); }

TEST(Typed, TurnsControlsAndLineEndsIntoOneSpace) {
  EXPECT_EQ(typed("Mill\r\n\tBridge\x1b[2J"), "Mill Bridge [2J");
  EXPECT_EQ(typed("Mill\u0085Bridge"), "Mill Bridge");
}

TEST(Typed, TakesOutMarksThatTurnTheDirectionOfWriting) { EXPECT_EQ(typed("a\u202Eb\u2066c"), "a b c"); }

// Ill-formed by RFC 3629, section 3: overlong, surrogate, over U+10FFFF, a lone continuation, a cut end.
TEST(Typed, PutsAQuestionMarkForBytesThatAreNoUtf8) {
  EXPECT_EQ(typed("\xC0\xAF"), "??");
  EXPECT_EQ(typed("\xED\xA0\x80"), "???");
  EXPECT_EQ(typed("\xF4\x90\x80\x80"), "????");
  EXPECT_EQ(typed("a\x80z"), "a?z");
  EXPECT_EQ(typed("ab\xE5\xB7"), "ab??");
}

// Unicode, UAX #9: a figure behind letters of class R or AL would be taken into their direction.
TEST(Typed, IsolatesWordsWrittenFromTheRight) {
  EXPECT_EQ(typed("\u05E0\u05D4\u05E8"), "\u2068\u05E0\u05D4\u05E8\u2069");
  EXPECT_EQ(typed("\u0646\u0647\u0631 4"), "\u2068\u0646\u0647\u0631 4\u2069");
  EXPECT_EQ(typed(typed("\u05E0\u05D4\u05E8")), typed("\u05E0\u05D4\u05E8"));
}

// Unicode, section 23.7: noncharacters.
TEST(Typed, PutsAQuestionMarkForWhatIsNoCharacter) { EXPECT_EQ(typed("a\uFFFF\uFDD0\U0001FFFE"), "a???"); }

TEST(Capitalised, RaisesTheFirstLetter) {
  EXPECT_EQ(capitalised("look"), "Look");
  EXPECT_EQ(capitalised(""), "");
}

TEST(WithoutStop, DropsAFullStopAtTheEnd) { EXPECT_EQ(without_stop("Look. "), "Look"); }

}  // namespace
}  // namespace floatwright
