// The demo's rig sheet on Letter and A4, read back with poppler: everything the composer wants on it is there.
#include <gmock/gmock.h>

#include <regex>

#include "tests/scenarios/scenario.hpp"

namespace floatwright::testing {
namespace {

using ::testing::HasSubstr;

class DemoSheet : public ::testing::TestWithParam<const char*> {
 protected:
  void SetUp() override {
    const Ran ran = demo_.plan({"--as", "sheet", "--paper", GetParam(), "--out", demo_.folder().string()});
    ASSERT_EQ(ran.exit_code, 0) << ran.err;
    file_ = (demo_.folder() / "2027-05-14-sheet.pdf").string();
    text_ = run_program({"/usr/bin/pdftotext", "-layout", file_, "-"}).out;
  }
  DemoCopy demo_;
  std::string file_, text_;
};

TEST_P(DemoSheet, IsOnePageOnWhichNothingIsLeftOut) {
  EXPECT_THAT(run_program({"/usr/bin/pdfinfo", file_}).out, ::testing::ContainsRegex("Pages: +1\n"));
  EXPECT_FALSE(std::regex_search(text_, std::regex("[Aa]nd [0-9]+ more"))) << text_;
}

TEST_P(DemoSheet, HasEveryRodRowCautionAndBoxInTheirOrder) {
  std::size_t at = 0;
  for (const char* words :
       {"LANTERN RIVER", "PUT IN", "RIG THESE", "nymph taper", "clear tip", "mayfly dry", "bag", "TIME", "STOP ABOVE",
        "dry fly", "take out", "WATCH", "no wading or anchoring", "life jackets ON", "RULES", "HELP", "FROM", "where",
        "bottom Y/N"}) {
    const std::size_t found = text_.find(words, at);
    ASSERT_NE(found, std::string::npos) << words << " not after the words before it in\n" << text_;
    at = found;
  }
}

// The stop, the rods and the rows are what is read in the boat: they stand in the upper two thirds.
TEST_P(DemoSheet, KeepsTheBottomThirdFreeOfWhatIsVital) {
  const std::string boxes = run_program({"/usr/bin/pdftotext", "-bbox", file_, "-"}).out;
  std::smatch page, stop;
  ASSERT_TRUE(std::regex_search(boxes, page, std::regex("page width=\"[0-9.]+\" height=\"([0-9.]+)\"")));
  ASSERT_TRUE(std::regex_search(boxes, stop, std::regex("yMax=\"([0-9.]+)\">WATCH")));
  EXPECT_LT(std::stod(stop[1]), std::stod(page[1]) * 2.0 / 3.0);
}

INSTANTIATE_TEST_SUITE_P(Papers, DemoSheet, ::testing::Values("letter", "a4"));

}  // namespace
}  // namespace floatwright::testing
