// Pages as HTML, judged by two readers that are not ours: html5lib's parser in its strict mode (python3-html5lib) and
// HTML Tidy (tidy), and looked into by html5lib's tree.
#include <gtest/gtest.h>
#include <sys/wait.h>

#include <array>
#include <cstdio>
#include <fstream>

#include "adapters/out/html/as_html.hpp"
#include "engine/wording/float_plan.hpp"
#include "engine/wording/morning_mail.hpp"
#include "tests/support/read_back.hpp"
#include "tests/support/sample_plan.hpp"

namespace floatwright::testing {
namespace {

HtmlOptions with_pictures() {
  HtmlOptions options;
  options.pictures = {{"hydrograph", "cid:hydrograph@demo"}, {"line", "cid:line@demo"}};
  return options;
}

// What html5lib finds wrong, or nothing; `say` is run on the tree afterwards.
std::string parsed(const std::string& html, const std::string& say = "") {
  return read_back(
      "import sys, html5lib\n"
      "parser = html5lib.HTMLParser(strict=True, namespaceHTMLElements=False)\n"
      "tree = parser.parse(open(sys.argv[1], 'rb').read(), transport_encoding='utf-8')\n" +
          say,
      html);
}

std::string tidied(const std::string& html) {
  const auto* test = ::testing::UnitTest::GetInstance()->current_test_info();
  const std::string file = std::string{FLOATWRIGHT_BINARY_DIR} + "/tidy_" + test->name() + ".html";
  std::ofstream(file, std::ios::binary) << html;
  FILE* pipe = popen(("tidy -q -e -utf8 '" + file + "' 2>&1").c_str(), "r");
  if (pipe == nullptr) return "tidy could not be started";
  std::string said;
  std::array<char, 512> part{};
  while (fgets(part.data(), static_cast<int>(part.size()), pipe) != nullptr) said += part.data();
  const int status = pclose(pipe);
  return status == 0 ? said : said + "tidy ended with " + std::to_string(WEXITSTATUS(status));
}

DayPlan plan_of(std::size_t count) {
  DayPlan plan = sample_plan();
  auto& reaches = plan.stretches[0].reaches;
  const std::vector<PlannedReach> own = reaches;
  reaches.clear();
  for (std::size_t i = 0; i < count; ++i) {
    reaches.push_back(own[i % own.size()]);
    reaches.back().name = "Reach " + std::to_string(i);
  }
  return plan;
}

TEST(Html, OfNoOneAndManyReachesIsReadWithoutAnError) {
  for (const std::size_t reaches : {0U, 1U, 6U, 40U}) {
    const std::string html = as_html(morning_mail(plan_of(reaches), sample_inputs()), with_pictures());
    EXPECT_EQ(parsed(html), "") << reaches;
    EXPECT_EQ(tidied(html), "") << reaches;
  }
}

TEST(Html, OfADayWithoutAReadingIsReadWithoutAnError) {
  DayPlan plan = sample_plan();
  plan.nothing = true;
  const std::string html = as_html(morning_mail(plan, sample_inputs()));
  EXPECT_EQ(parsed(html, "print(tree.find('.//h1').text)"), "NO PLAN: Lantern River \n");
  EXPECT_EQ(tidied(html), "");
}

TEST(Html, OfEveryKindOfBlockIsReadWithoutAnError) {
  EXPECT_EQ(parsed(as_html(float_plan(sample_plan(), sample_inputs()))), "");
  const Page page{"", {Lines{{}, "CARE"}, PageTable{}, PageTable{{"A"}, {}, {}}, PageTable{{}, {}, {{"a", ""}, {}}},
                       Rods{"RODS", {{"", "", {}}}, {}}, PencilBoxes{{"where"}}}};
  EXPECT_EQ(parsed(as_html(page)), "");
}

TEST(Html, FetchesAndRunsNothing) {
  HtmlOptions options = with_pictures();
  options.pictures["line"] = "https://example.org/line.png";
  const std::string html = as_html(morning_mail(sample_plan(), sample_inputs()), options);
  EXPECT_EQ(parsed(html,
                   "print([e.tag for e in tree.iter() if e.tag in ('script', 'link', 'iframe', 'base', 'object')])\n"
                   "print([e.get('src') for e in tree.iter() if e.get('src') or e.get('href')])\n"
                   "print([k for e in tree.iter() for k in e.attrib if k.startswith('on') or k in ('id', 'style')])\n"
                   "print('url(' in ''.join(tree.itertext()), '@import' in ''.join(tree.itertext()))"),
            "[]\n['cid:hydrograph@demo']\n[]\nFalse False\n");
}

TEST(Html, NamesItsLanguageAndTitle) {
  HtmlOptions options;
  options.language = "en-GB";
  const Page page = morning_mail(sample_plan(), sample_inputs());
  EXPECT_EQ(parsed(as_html(page, options), "print(tree.get('lang'), '|', tree.find('.//title').text)"),
            "en-GB | " + page.title + "\n");
}

TEST(Html, HasTheWordsOfItsPicturesForPeopleWhoDoNotSeeThem) {
  const std::string html = as_html(morning_mail(sample_plan(), sample_inputs()), with_pictures());
  EXPECT_EQ(parsed(html,
                   "alts = [i.get('alt') for i in tree.iter('img')]\n"
                   "print(len(alts), alts[0].startswith('Flow'), alts[1].startswith('The line over the bed'))"),
            "2 True True\n");
}

TEST(Html, LeavesOutAFigureWithoutAPicture) {
  EXPECT_EQ(parsed(as_html(morning_mail(sample_plan(), sample_inputs())), "print(len(list(tree.iter('figure'))))"),
            "0\n");
}

// A mark is read out by its name: the shape alone says nothing to one who does not see it.
TEST(Html, NamesTheShapeOfARod) {
  const Page page{"", {PageTable{{"ROD"}, {}, {{"mark:triangle"}, {"mark:fish"}}}}};
  EXPECT_EQ(parsed(as_html(page), "print([td.text for td in tree.iter('td')])"), "['▲\\xa0triangle', '[fish]']\n");
}

TEST(Html, SaysBesideEveryFigureWhatItIs) {
  const Page page{"", {PageTable{{"TIME", "DEEP"}, {"", "ft"}, {{"07:30", "4 1/2"}, {"08:00", "?"}}}}};
  EXPECT_EQ(parsed(as_html(page), "print([''.join(td.itertext()) for td in tree.iter('td')])"),
            "['07:30', 'deep 4\\xa01/2 ft', '08:00', 'deep ?']\n");
}

TEST(Html, RunsTheLastCellOfAShortRowOnOverTheRest) {
  const Page page{"", {PageTable{{"TIME", "WATER", "DEEP", "HOW"}, {"", "", "ft", ""}, {{"09:50", "LEDGE", "STOP."}}}}};
  EXPECT_EQ(parsed(as_html(page), "print([td.get('colspan') for td in tree.iter('td')])"), "[None, None, '2']\n");
}

// Names are printed, never obeyed.
TEST(Html, PrintsMarkupAsItWasTyped) {
  DayInputs in = sample_inputs();
  in.river.name = "</title><script>alert(1)</script>&amp;\"'";
  DayPlan plan = sample_plan();
  plan.stretches[0].reaches[0].name = "<img src=x onerror=alert(1)>";
  plan.stretches[0].from_name = "\"><b>Mill";
  const std::string html = as_html(morning_mail(plan, in));
  EXPECT_EQ(parsed(html,
                   "print(len(list(tree.iter('script'))), len(list(tree.iter('img'))), len(list(tree.iter('b'))))\n"
                   "print('<img src=x onerror=alert(1)>' in ''.join(tree.itertext()))"),
            "0 0 0\nTrue\n");
}

TEST(Html, HoldsControlsAndWhatIsNoCharacter) {
  const Page page{std::string("a\0b\x1b\xff", 5), {Lines{{"c\x01\x7f d\u0085\uFFFF\xed\xa0\x80"}, ""}}};
  EXPECT_EQ(parsed(as_html(page), "print(tree.find('.//title').text, '|', tree.find('.//p').text)"),
            "a b ? | c   d ????\n");
}

TEST(Html, EndsNoLineInsideAMeasure) {
  const Page page{"", {Lines{{"tip 12 1/2 ft 5 in/s, at 4 ft"}, ""}}};
  EXPECT_EQ(parsed(as_html(page), "print(ascii(tree.find('.//p').text))"),
            "'tip 12\\xa01/2\\xa0ft 5\\xa0in/s, at\\xa04\\xa0ft'\n");
}

}  // namespace
}  // namespace floatwright::testing
