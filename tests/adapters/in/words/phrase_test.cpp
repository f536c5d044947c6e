// Amounts in a person's words. Factors: NIST SP 811, Appendix B (international foot and pound).
#include "adapters/in/words/phrase.hpp"

#include <gmock/gmock.h>

namespace floatwright {
namespace {

using testing::DoubleNear;
using testing::ElementsAre;
using testing::HasSubstr;
using testing::IsEmpty;

Phrase read(std::string_view text) {
  const auto phrase = phrase_of("--line", text, "5 ft");
  EXPECT_TRUE(phrase) << text << ": " << (phrase ? "" : phrase.error().what);
  return phrase.value_or(Phrase{});
}
double si(std::string_view text) {
  const Phrase phrase = read(text);
  EXPECT_EQ(phrase.amounts.size(), 1U) << text;
  return phrase.amounts.empty() ? 0.0 : phrase.amounts.front().from;
}

TEST(Phrase, TakesEveryUnitOfTheTrade) {
  EXPECT_DOUBLE_EQ(si("12.5 ft"), 3.81);
  EXPECT_DOUBLE_EQ(si("1 in"), 0.0254);
  EXPECT_DOUBLE_EQ(si("30cm"), 0.3);
  EXPECT_DOUBLE_EQ(si("1.5 mm"), 0.0015);
  EXPECT_DOUBLE_EQ(si("5 in/s"), 0.127);
  EXPECT_DOUBLE_EQ(si("3 FT/S"), 0.9144);
  EXPECT_DOUBLE_EQ(si("13 cm/s"), 0.13);
  EXPECT_NEAR(si("2 mph"), 0.89408, 1e-12);
  EXPECT_DOUBLE_EQ(si("3.6 km/h"), 1.0);
  EXPECT_NEAR(si("100 gr"), 0.006479891, 1e-15);
  EXPECT_NEAR(si("11 gr/ft"), 0.0023385433, 1e-9);
  EXPECT_NEAR(si("50 F"), 10.0, 1e-12);
  EXPECT_NEAR(si("50 \xC2\xB0"
                 "F"),
              10.0, 1e-12);
  EXPECT_DOUBLE_EQ(si("2 min"), 120.0);
}

TEST(Phrase, TakesFractionsAndRanges) {
  EXPECT_DOUBLE_EQ(si("12 1/2 ft"), 3.81);
  EXPECT_DOUBLE_EQ(si("1/2 m"), 0.5);
  for (const char* text : {"4 to 6 in/s", "4-6 in/s", "4 - 6 in/s"}) {
    const Phrase range = read(text);
    ASSERT_EQ(range.amounts.size(), 1U) << text;
    EXPECT_DOUBLE_EQ(range.amounts[0].from, 0.1016);
    EXPECT_DOUBLE_EQ(range.amounts[0].to, 0.1524);
  }
}

TEST(Phrase, KeepsWordsAndCodesApart) {
  const Phrase phrase = read("WF-6-F/S sinking_tip, 12.5 ft 5 in/s 6-wt");
  EXPECT_THAT(phrase.codes, ElementsAre("WF-6-F/S"));
  EXPECT_THAT(phrase.words, ElementsAre("sinking", "tip"));
  ASSERT_EQ(phrase.amounts.size(), 3U);
  EXPECT_EQ(phrase.amounts[2].kind, AmountKind::OfLineNumber);
  EXPECT_THAT(read("").words, IsEmpty());
}

TEST(Phrase, RefusesANumberThatHasNoUnit) {
  for (const char* text : {"5", "12.5 5 in/s", "5 furlongs", "5 in/", "1e400 ft", "5 to ft", "nan ft 3", "3 ft 1/0"}) {
    const auto phrase = phrase_of("--depth", text, "5 ft");
    ASSERT_FALSE(phrase) << text;
    EXPECT_EQ(phrase.error().exit_code, 64);
    EXPECT_THAT(phrase.error().what, HasSubstr("--depth"));
    EXPECT_THAT(phrase.error().what, HasSubstr("\"5 ft\""));
  }
}

TEST(Phrase, NeverFallsOverWhateverIsTyped) {
  std::string text;
  for (int i = 0; i < 20000; ++i) {
    text += static_cast<char>((i * 7919 + i / 256) % 256);
    if (i % 97 == 0) {
      (void)phrase_of("--line", text, "5 ft");
      text = text.substr(text.size() / 2);
    }
  }
}

}  // namespace
}  // namespace floatwright
