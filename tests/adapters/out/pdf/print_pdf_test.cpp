// Sheets read back with programs that had no part in making them: poppler's pdffonts, pdfinfo and pdftotext, and qpdf.
#include "adapters/out/pdf/print_pdf.hpp"

#include <gmock/gmock.h>

#include <cstdlib>
#include <regex>

#include "tests/support/run_program.hpp"

namespace floatwright::testing {
namespace {

using ::testing::HasSubstr;
using ::testing::Not;

constexpr std::size_t kMany = 40;

std::vector<std::string> row(std::size_t i) {
  return {"07:30", "Reach " + std::to_string(i), "4 1/2", "3.5", "mark:square", "ANCHOR, one mend, swing", "2 1/2"};
}

Page page_with(std::size_t rows, const std::string& name = "Mill Bridge") {
  Page page{"Lantern River, Friday 14 May 2027", {}};
  page.blocks.push_back(Heading{"LANTERN RIVER  " + name + " -> Old Ferry  11.6 mi", "FRI 14 MAY 2027", 1});
  page.blocks.push_back(Lines{{"Wren   PUT IN 07:30   OFF BY 16:00"}, ""});
  page.blocks.push_back(Rods{"RIG THESE BEFORE YOU LAUNCH",
                             {{"square", "A", {"9 ft 6-wt  sinking tip", "weighted streamer"}},
                              {"two rings", "B", {"9 ft 5-wt  " + name}}},
                             {"sinking tip 10 ft"}});
  PageTable table{{"TIME", "WATER", "DEEP", "FAST", "ROD", "HOW", "FLY AT"}, {"", "(mile)", "ft", "ft/s", "", "", "ft"}, {}};
  for (std::size_t i = 1; i <= rows; ++i) table.rows.push_back(row(i));
  table.rows.push_back({"14:10", "THE LEDGE 30.1", "STOP ABOVE. PORTAGE RIGHT."});
  page.blocks.push_back(table);
  page.blocks.push_back(Lines{{"Dam up at 09:00.", "Life jackets on."}, "WATCH"});
  page.blocks.push_back(Lines{{"Gauge read 19:45.", "Notes of 20 May 2026."}, "FROM"});
  page.blocks.push_back(PencilBoxes{{"where", "hour", "depth", "bottom Y/N", "rod", "water F"}});
  return page;
}

PdfOptions at_a_time(Paper paper = Paper::Letter) {
  PdfOptions options;
  options.paper = paper;
  options.made_at = std::chrono::sys_days{std::chrono::year{2027} / 5 / 14} + std::chrono::hours{2};
  return options;
}

class Sheet : public ::testing::Test {
 protected:
  void print(const Page& page, const PdfOptions& options = at_a_time()) {
    const auto bytes = as_pdf({page}, options);
    ASSERT_TRUE(bytes) << bytes.error().what;
    write_text(file(), *bytes);
  }
  [[nodiscard]] Ran says(std::vector<std::string> words, const std::vector<std::string>& after = {}) const {
    words.push_back(file().string());
    words.insert(words.end(), after.begin(), after.end());
    return run_program(words);
  }
  [[nodiscard]] std::string text() const { return says({"/usr/bin/pdftotext", "-layout"}, {"-"}).out; }
  [[nodiscard]] std::filesystem::path file() const { return scratch_.path() / "sheet.pdf"; }

 private:
  ScratchFolder scratch_;
};

TEST_F(Sheet, IsAFileThatQpdfFindsNoFaultIn) {
  print(page_with(3));
  const Ran ran = says({"/usr/bin/qpdf", "--check"});
  EXPECT_EQ(ran.exit_code, 0) << ran.out << ran.err;
}

TEST_F(Sheet, EmbedsEveryFontAsASubset) {
  print(page_with(3));
  const std::string fonts = says({"/usr/bin/pdffonts"}).out;
  const std::regex embedded("DejaVuSans[^\n]* yes yes yes "), any("\n[^\n]+ +[0-9]+  0");
  const auto count = [&](const std::regex& which) {
    return std::distance(std::sregex_iterator(fonts.begin(), fonts.end(), which), std::sregex_iterator());
  };
  EXPECT_GT(count(any), 0) << fonts;
  EXPECT_EQ(count(embedded), count(any)) << fonts;
}

TEST_F(Sheet, KeepsTheWordsAndTheirOrder) {
  print(page_with(3));
  const std::string words = text();
  std::size_t at = 0;
  for (const char* word : {"LANTERN RIVER", "PUT IN 07:30", "RIG THESE", "9 ft 6-wt", "two rings", "bag", "TIME", "Reach 1",
                           "ANCHOR, one mend, swing", "Reach 3", "STOP ABOVE.", "WATCH", "Life jackets", "FROM",
                           "bottom Y/N"}) {
    const std::size_t found = words.find(word, at);
    ASSERT_NE(found, std::string::npos) << word << " not after the words before it in\n" << words;
    at = found;
  }
}

TEST_F(Sheet, IsLetterOrA4AsAsked) {
  print(page_with(3));
  EXPECT_THAT(says({"/usr/bin/pdfinfo"}).out, HasSubstr("612 x 792 pts (letter)"));
  print(page_with(3), at_a_time(Paper::A4));
  EXPECT_THAT(says({"/usr/bin/pdfinfo"}).out, HasSubstr("(A4)"));
}

TEST_F(Sheet, SaysItsTitleAndTheTimeItIsGiven) {
  print(page_with(3));
  const std::string info = run_program({"/usr/bin/pdfinfo", "-isodates", file().string()}).out;
  EXPECT_THAT(info, HasSubstr("Lantern River, Friday 14 May 2027"));
  EXPECT_THAT(info, HasSubstr("2027-05-14T02:00:00Z"));
}

TEST_F(Sheet, SaysItsLanguage) {
  print(page_with(3));
  EXPECT_THAT(says({"/usr/bin/qpdf", "--qdf", "--object-streams=disable"}, {"-"}).out, HasSubstr("/Lang (en)"));
}

TEST_F(Sheet, IsTheSameBytesTwice) { EXPECT_EQ(*as_pdf({page_with(3)}, at_a_time()), *as_pdf({page_with(3)}, at_a_time())); }

// A word's box is as high as its font's lines, for this one more than its size: 13 points are the least.
TEST_F(Sheet, PrintsNothingUnder13Points) {
  print(page_with(kMany));
  const std::string boxes = says({"/usr/bin/pdftotext", "-bbox"}, {"-"}).out;
  const std::regex word("yMin=\"([0-9.]+)\" xMax=\"[0-9.]+\" yMax=\"([0-9.]+)\"");
  std::size_t words = 0;
  for (auto it = std::sregex_iterator(boxes.begin(), boxes.end(), word); it != std::sregex_iterator(); ++it, ++words)
    EXPECT_GE(std::stod((*it)[2]) - std::stod((*it)[1]), 13.0) << it->str();
  EXPECT_GT(words, 50u);
}

// A note is a row, on both papers; nothing of it is lost where a sheet is full.
TEST_F(Sheet, HasAllPencilBoxesOfANoteInOneRow) {
  for (const Paper paper : {Paper::Letter, Paper::A4}) {
    print(page_with(6), at_a_time(paper));
    const std::string boxes = says({"/usr/bin/pdftotext", "-bbox"}, {"-"}).out;
    std::vector<double> tops;  // points
    for (const char* label : {"where", "hour", "depth", "bottom", "rod", "water"}) {
      std::smatch word;
      ASSERT_TRUE(std::regex_search(boxes, word, std::regex("yMin=\"([0-9.]+)\"[^>]*>" + std::string(label) + "<"))) << label;
      tops.push_back(std::stod(word[1]));
    }
    EXPECT_THAT(tops, ::testing::Each(::testing::DoubleNear(tops.front(), 0.1)));
  }
}

TEST_F(Sheet, WhenFullLeavesOutWhatTheBagHoldsBeyondTheNearest) {
  Page page = page_with(8);
  auto& rods = std::get<Rods>(page.blocks[2]);
  rods.bag_kept = 1;
  for (int item = 0; item < 30; ++item) rods.bag.push_back("spool " + std::to_string(item));
  print(page);
  const std::string words = text();
  EXPECT_THAT(words, ::testing::AllOf(HasSubstr("sinking tip 10 ft"), HasSubstr("more lines: see the plan"), HasSubstr("where"),
                                      HasSubstr("Reach 8")));
}

// The words that tell of a line take a line too.
TEST_F(Sheet, LeavesOutNoSingleLineForTheWordsThatTellOfIt) {
  Page page = page_with(kMany);
  auto& rods = std::get<Rods>(page.blocks[2]);
  rods.bag_kept = 1;
  rods.bag.emplace_back("spool 0");
  print(page);
  EXPECT_THAT(text(), ::testing::AllOf(HasSubstr("spool 0"), Not(HasSubstr("more line:"))));
}

TEST_F(Sheet, Of40ReachesIsOnePageThatKeepsTheStopAndCountsWhatItLeftOut) {
  print(page_with(kMany));
  EXPECT_THAT(says({"/usr/bin/pdfinfo"}).out, ::testing::ContainsRegex("Pages: +1\n"));
  const std::string words = text();
  EXPECT_THAT(words, HasSubstr("STOP ABOVE."));
  EXPECT_THAT(words, HasSubstr("Life jackets on."));
  std::smatch more;
  ASSERT_TRUE(std::regex_search(words, more, std::regex("and ([0-9]+) more rows: see the plan"))) << words;
  const std::regex kept("Reach [0-9]+");
  const auto shown = std::distance(std::sregex_iterator(words.begin(), words.end(), kept), std::sregex_iterator());
  EXPECT_EQ(static_cast<std::size_t>(shown) + std::stoul(more[1]), kMany);
}

TEST_F(Sheet, OfNoReachesIsStillASheet) {
  print(page_with(0));
  EXPECT_THAT(text(), Not(HasSubstr("more")));
  EXPECT_EQ(says({"/usr/bin/qpdf", "--check"}).exit_code, 0);
}

TEST_F(Sheet, HoldsNamesOfAnyLengthAndScript) {
  print(page_with(8, std::string(3000, 'x') + " \u05d2\u05e9\u05e8 \u6a4b \U0001F3A3"));
  EXPECT_THAT(says({"/usr/bin/pdfinfo"}).out, ::testing::ContainsRegex("Pages: +1\n"));
  EXPECT_EQ(says({"/usr/bin/qpdf", "--check"}).exit_code, 0);
  EXPECT_THAT(text(), HasSubstr("STOP ABOVE."));
}

TEST_F(Sheet, PrintsAPageABoat) {
  const auto bytes = as_pdf({page_with(2), page_with(3)}, at_a_time());
  ASSERT_TRUE(bytes);
  write_text(file(), *bytes);
  EXPECT_THAT(says({"/usr/bin/pdfinfo"}).out, ::testing::ContainsRegex("Pages: +2\n"));
}

TEST(Fonts, AreLookedForByName) {
  EXPECT_TRUE(font_is_there(kFamily));
  EXPECT_FALSE(font_is_there("No Such Family"));
}

// In a process of its own, since fontconfig reads its file once.
TEST(FontsDeathTest, ThatAreMissingAreToldWithTheirPackage) {
  GTEST_FLAG_SET(death_test_style, "threadsafe");
  const ScratchFolder scratch;
  const auto no_fonts = scratch.path() / "fonts.conf";
  write_text(no_fonts, "<?xml version=\"1.0\"?><fontconfig></fontconfig>\n");
  EXPECT_EXIT(
      {
        setenv("FONTCONFIG_FILE", no_fonts.c_str(), 1);
        const auto made = as_pdf({page_with(1)}, at_a_time());
        if (!made) std::fputs(made.error().what.c_str(), stderr);
        std::exit(made ? 0 : made.error().exit_code);
      },
      ::testing::ExitedWithCode(kExitNoInput), "fonts-dejavu-core");
}

}  // namespace
}  // namespace floatwright::testing
