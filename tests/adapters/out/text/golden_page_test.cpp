// The guide's plan and the morning mail of the sample day, word for word. When a change of words is meant, read the fresh page aloud and put
// it in place of the old one.
#include <gtest/gtest.h>

#include <cctype>
#include <fstream>
#include <set>
#include <sstream>

#include "adapters/out/text/print_text.hpp"
#include "adapters/out/text/width.hpp"
#include "engine/wording/float_plan.hpp"
#include "engine/wording/morning_mail.hpp"
#include "tests/support/sample_plan.hpp"

namespace floatwright::testing {
namespace {

std::vector<std::string> lines_of(const std::string& text) {
  std::vector<std::string> lines;
  std::istringstream in(text);
  for (std::string line; std::getline(in, line);) lines.push_back(line);
  return lines;
}

std::string text_of(const std::string& path) {
  std::ifstream in(path, std::ios::binary);
  std::ostringstream out;
  out << in.rdbuf();
  return out.str();
}

std::string difference(const std::string& wanted, const std::string& got) {
  const auto a = lines_of(wanted), b = lines_of(got);
  std::string out;
  for (std::size_t i = 0; i < std::max(a.size(), b.size()); ++i) {
    const std::string one = i < a.size() ? a[i] : "", other = i < b.size() ? b[i] : "";
    if (one != other) out += "line " + std::to_string(i + 1) + "\n- " + one + "\n+ " + other + "\n";
  }
  return out;
}

void expect_golden(const std::string& name, const std::string& got) {
  const std::string golden = std::string(FLOATWRIGHT_SOURCE_DIR) + "/fixtures/golden/" + name;
  const std::string wanted = text_of(golden);
  if (got == wanted) return;
  const std::string fresh = std::string(FLOATWRIGHT_BINARY_DIR) + "/" + name;
  std::ofstream(fresh, std::ios::binary) << got;
  FAIL() << golden << " and " << fresh << " differ\n" << difference(wanted, got);
}

TEST(SamplePage, IsTheGoldenPage) {
  expect_golden("float_plan_sample.txt", as_text(float_plan(sample_plan(), sample_inputs())));
}

TEST(SampleMail, IsTheGoldenMail) {
  const Page page = morning_mail(sample_plan(), sample_inputs());
  expect_golden("morning_mail_sample.txt", "Subject: " + page.title + "\n\n" + as_text(page));
}

TEST(SamplePage, IsNowhereWiderThan78Columns) {
  for (const UnitSystem units : {UnitSystem::Us, UnitSystem::Metric}) {
    DayInputs in = sample_inputs();
    in.settings.units = units;
    for (const std::string& line : lines_of(as_text(float_plan(sample_plan(), in))))
      EXPECT_LE(columns(line), 78u) << line;
  }
}

// The sample's help line is typed and speaks of miles; everything else is the project's own words.
TEST(SamplePage, HasNoFootMileFahrenheitOrCfsForMetricPeople) {
  DayInputs in = sample_inputs();
  in.settings.units = UnitSystem::Metric;
  in.settings.emergency.clear();
  const std::string page = as_text(float_plan(sample_plan(), in));
  EXPECT_NE(page.find("52.4 m3/s"), std::string::npos) << "1,850 cfs";
  const std::set<std::string> american{"ft",    "ft/s", "ft2/s", "in/s", "mi",  "mile",
                                       "miles", "F",    "cfs",   "feet", "foot"};
  std::string word;
  for (const char c : page + " ") {
    const bool part = std::isalnum(static_cast<unsigned char>(c)) != 0 || c == '/';
    if (part) word += c;
    if (!part) {
      EXPECT_FALSE(american.contains(word)) << word << " in\n" << page;
      word.clear();
    }
  }
}

}  // namespace
}  // namespace floatwright::testing
