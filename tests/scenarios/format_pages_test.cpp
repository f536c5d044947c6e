// The manual pages of the files that a person writes, held against the published schemas: every key stands in its page as
// a term, and no other; every word that a key may have stands there too.
#include <gmock/gmock.h>

#include <nlohmann/json.hpp>
#include <regex>
#include <set>
#include <sstream>

#include "tests/scenarios/scenario.hpp"

namespace floatwright::testing {
namespace {

using ::testing::HasSubstr;
using ::testing::IsSupersetOf;
using Words = std::set<std::string>;

struct Named {
  Words keys, values;
};

// Of a JSON Schema (draft 2020-12): the names under "properties" and the words of "enum", at any depth.
void collect(const nlohmann::json& schema, Named& named) {
  if (schema.is_object()) {
    if (schema.contains("properties") && schema["properties"].is_object())
      for (const auto& property : schema["properties"].items()) named.keys.insert(property.key());
    if (schema.contains("enum") && schema["enum"].is_array())
      for (const auto& word : schema["enum"]) named.values.insert(word.get<std::string>());
  }
  if (schema.is_structured())
    for (const auto& part : schema) collect(part, named);
}

Named named_by(const std::string& file) {
  Named named;
  collect(nlohmann::json::parse(text_of(kRoot / ("config/schemas/" + file + ".schema.json"))), named);
  return named;
}

// scdoc(5): an underscore between letters is written with a backslash, bold between stars.
std::string page_of(const std::string& file) {
  const auto text = text_of(kRoot / ("docs/man/floatwright-" + file + ".5.scd"));
  return std::regex_replace(text, std::regex{R"(\\_)"}, "_");
}

Words bold(const std::string& text) {
  const std::regex between_stars{R"(\*([^*\s]+)\*)"};
  return {std::sregex_token_iterator{text.begin(), text.end(), between_stars, 1}, std::sregex_token_iterator{}};
}

// A term begins its line with a star; what is said of it is indented.
Words terms(const std::string& page) {
  Words all;
  std::istringstream lines{page};
  for (std::string line; std::getline(lines, line);)
    if (line.starts_with("*") && !line.starts_with("*floatwright")) all.merge(bold(line));
  return all;
}

class FormatPage : public ::testing::TestWithParam<const char*> {};
INSTANTIATE_TEST_SUITE_P(Of, FormatPage, ::testing::Values("river", "tackle", "settings", "boats"),
                         [](const auto& param) { return std::string{param.param}; });

TEST_P(FormatPage, HasEveryKeyOfTheSchemaAndNoOther) {
  const auto named = named_by(GetParam());
  ASSERT_GT(named.keys.size(), 15U);
  EXPECT_EQ(terms(page_of(GetParam())), named.keys);
}

TEST_P(FormatPage, HasEveryWordThatAKeyMayHave) { EXPECT_THAT(bold(page_of(GetParam())), IsSupersetOf(named_by(GetParam()).values)); }

TEST(JudgementPage, HoldsTheFileAsItIsShipped) {
  const auto page = text_of(std::filesystem::path{FLOATWRIGHT_BINARY_DIR} / "man/floatwright-judgement.5.scd");
  const auto named = named_by("judgement");
  ASSERT_GT(named.keys.size(), 100U);
  for (const auto& key : named.keys) EXPECT_THAT(page, HasSubstr("\"" + key + "\":"));
}

TEST(FormatPages, AreTakenByScdocAndShownByTheProgramsPage) {
  for (const std::string file : {"river", "tackle", "settings", "boats", "judgement"}) {
    const auto page = std::filesystem::path{FLOATWRIGHT_BINARY_DIR} / ("man/floatwright-" + file + ".5.scd");
    const auto made = run_program({"/bin/sh", "-c", "exec /usr/bin/scdoc < \"$0\"", page.string()});
    EXPECT_EQ(made.exit_code, 0) << made.err << "(needs the package scdoc)";
    EXPECT_THAT(made.out, HasSubstr(".SH DESCRIPTION"));
    EXPECT_THAT(text_of(kRoot / "docs/man/floatwright.1.scd"), HasSubstr("*floatwright-" + file + "*(5)"));
  }
}

}  // namespace
}  // namespace floatwright::testing
