// The manual page against the program: every command, option, kind and exit code stands in it, and scdoc takes it.
#include <gmock/gmock.h>

#include <iostream>
#include <regex>
#include <set>

#include "tests/scenarios/scenario.hpp"

namespace floatwright::testing {
namespace {

using ::testing::HasSubstr;

const std::filesystem::path kPage = kRoot / "docs/man/floatwright.1.scd";

std::set<std::string> options_in(const std::string& text) {
  const std::regex option{"--[a-z]+"};
  return {std::sregex_token_iterator{text.begin(), text.end(), option}, std::sregex_token_iterator{}};
}

TEST(ManualPage, NamesEveryOptionOfTheProgramAndNoOther) {
  std::string help;
  for (const std::vector<std::string>& command : {std::vector<std::string>{}, {"start"}, {"plan"}, {"check"}, {"sink"}, {"season"}, {"show", "readings"}, {"show", "river"}, {"show", "skill"}, {"log"}, {"tune"}}) {
    auto words = command;
    words.push_back("--help");
    const auto said = floatwright_says(words);
    ASSERT_EQ(said.exit_code, 0);
    help += said.out;
  }
  ASSERT_GT(options_in(help).size(), 10U);
  EXPECT_EQ(options_in(text_of(kPage)), options_in(help));
}

TEST(ManualPage, NamesEveryKindOfOutput) {
  const auto refused = floatwright_says({"plan", "--as", "no_such_kind"});
  const auto at = refused.err.find("the kinds are ");
  ASSERT_NE(at, std::string::npos) << refused.err;
  const std::regex kind{"[a-z]+"};
  const auto list = refused.err.substr(at + std::string{"the kinds are "}.size());
  for (std::sregex_iterator word{list.begin(), list.end(), kind}, end; word != end; ++word)
    EXPECT_THAT(text_of(kPage), HasSubstr("*" + word->str() + "*"));
}

TEST(ManualPage, IsTakenByScdocAndHasTheUsualParts) {
  if (!std::filesystem::exists("/usr/bin/scdoc")) {
    std::cout << "not run here: the package scdoc is not installed\n";
    return;
  }
  const auto made = run_program({"/bin/sh", "-c", "exec /usr/bin/scdoc < \"$0\"", kPage.string()});
  EXPECT_EQ(made.exit_code, 0) << made.err;
  for (const auto* part : {"NAME", "SYNOPSIS", "DESCRIPTION", "EXIT STATUS", "ENVIRONMENT", "EXAMPLES"})
    EXPECT_THAT(made.out, HasSubstr(std::string{".SH "} + part)) << part;
}

TEST(ManualPage, NamesEveryExitCode) {
  const auto page = text_of(kPage);
  const auto codes = text_of(kRoot / "adapters/result.hpp");
  const std::regex code{"kExit[A-Za-z]+ = ([0-9]+)"};
  int met = 0;
  for (std::sregex_iterator match{codes.begin(), codes.end(), code}, end; match != end; ++match, ++met)
    EXPECT_THAT(page, HasSubstr("*" + (*match)[1].str() + "*")) << match->str();
  EXPECT_GE(met, 10);
}

}  // namespace
}  // namespace floatwright::testing
