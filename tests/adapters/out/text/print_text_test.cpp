#include "adapters/out/text/print_text.hpp"

#include <gmock/gmock.h>

#include "adapters/out/text/text_table.hpp"
#include "adapters/out/text/width.hpp"

namespace floatwright {
namespace {

using ::testing::ElementsAre;
using ::testing::HasSubstr;

Page page_of(Block block) { return {"", {std::move(block)}}; }

TEST(Text, PutsTheRightHalfOfAHeadingAtColumn78) {
  const std::string text = as_text(page_of(Heading{"LANTERN RIVER", "FRI 14 MAY 2027", 1}));
  EXPECT_EQ(text.size(), 79u);
  EXPECT_TRUE(text.ends_with("FRI 14 MAY 2027\n"));
}

TEST(Text, BreaksAHeadingThatDoesNotFitWithTheDayFirst) {
  const std::string text = as_text(page_of(Heading{std::string(70, 'x'), "FRI 14 MAY 2027", 1}));
  EXPECT_TRUE(text.starts_with("FRI 14 MAY 2027\n"));
}

TEST(Text, HangsSentencesBesideTheirLabel) {
  const std::string text = as_text(page_of(Lines{{"First.", "Second."}, "CARE"}));
  EXPECT_EQ(text, "CARE   First.\n       Second.\n");
}

TEST(Text, IndentsTheRestOfALongSentence) {
  const std::string text = as_text(page_of(Lines{{std::string(40, 'a') + " " + std::string(40, 'b')}, "CARE"}));
  EXPECT_EQ(text, "CARE   " + std::string(40, 'a') + "\n" + std::string(9, ' ') + std::string(40, 'b') + "\n");
}

TEST(Text, DrawsRodMarksWithKeys) {
  EXPECT_EQ(drawn_mark("square"), "[#]");
  EXPECT_EQ(drawn_mark("triangle"), "/^\\");
  EXPECT_EQ(drawn_mark("circle"), "(O)");
  EXPECT_EQ(drawn_mark("diamond"), "<#>");
  EXPECT_EQ(drawn_mark("cross"), "[X]");
  EXPECT_EQ(drawn_mark("two rings"), "[two rings]");
}

TEST(Text, SetsARodsLinesUnderOneAnother) {
  const std::string text = as_text(page_of(Rods{"RIG", {{"square", "A", {"9 ft 6-wt", "streamer"}}}, {"tip", "shot"}}));
  EXPECT_EQ(text, "RIG\n [#] A  9 ft 6-wt\n        streamer\n bag    tip\n        shot\n");
}

TEST(Text, PrintsPencilBoxesAsRules) {
  EXPECT_EQ(as_text(page_of(PencilBoxes{{"where", "hour"}})), "PENCIL where ________  hour ________\n");
}

TEST(TextTable, AlignsItsColumns) {
  const PageTable table{{"TIME", "DEEP"}, {"", "ft"}, {{"07:30", "4 1/2"}, {"10:10", "3"}}};
  EXPECT_THAT(table_lines(table, 78), ElementsAre(" TIME   DEEP", "        ft", " 07:30  4 1/2", " 10:10  3"));
}

TEST(TextTable, RunsTheLastCellOfAShortRowOverTheRest) {
  const PageTable table{{"A", "B", "C"}, {}, {{"1", "2", "3"}, {"1", "STOP ABOVE. PORTAGE RIGHT."}}};
  EXPECT_THAT(table_lines(table, 78), ElementsAre(" A  B  C", " 1  2  3", " 1  STOP ABOVE. PORTAGE RIGHT."));
}

TEST(TextTable, WrapsTheWidestColumnAndKeepsFiguresWhole) {
  const PageTable table{{"HOW", "DEEP"}, {}, {{"one two three four five six", "4 1/2"}}};
  const auto lines = table_lines(table, 24);
  ASSERT_EQ(lines.size(), 3u);
  EXPECT_THAT(lines[1], HasSubstr("4 1/2"));
  for (const std::string& line : lines) EXPECT_LE(columns(line), 24u);
}

TEST(TextTable, StaysWithinThePageWithAWordOfAnyLength) {
  const PageTable table{{"A", "B"}, {}, {{std::string(200, 'x'), std::string(90, 'y')}}};
  for (const std::string& line : table_lines(table, 78)) EXPECT_LE(columns(line), 78u);
}

TEST(TextTable, DrawsAMarkCell) {
  const PageTable table{{"ROD"}, {}, {{"mark:circle"}}};
  EXPECT_THAT(table_lines(table, 78), ElementsAre(" ROD", " (O)"));
}

TEST(Text, LetsNoControlCharacterOut) { EXPECT_EQ(as_text(page_of(Lines{{"a\x1b[31mb"}, ""})), "a [31mb\n"); }

}  // namespace
}  // namespace floatwright
