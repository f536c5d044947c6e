// What the shells complete, held against the program's own help: every command, option and kind, and no other option.
#include <gmock/gmock.h>

#include <regex>
#include <set>
#include <sstream>

#include "tests/scenarios/scenario.hpp"

namespace floatwright::testing {
namespace {

using ::testing::HasSubstr;
using ::testing::IsSupersetOf;
using ::testing::UnorderedElementsAre;
using Words = std::set<std::string>;

const std::filesystem::path kBash = kRoot / "config/completion/floatwright.bash";
const std::filesystem::path kZsh = kRoot / "config/completion/_floatwright";

Words matches(const std::string& text, const char* pattern, int group = 0) {
  const std::regex wanted{pattern};
  return {std::sregex_token_iterator{text.begin(), text.end(), wanted, group}, std::sregex_token_iterator{}};
}

std::string help_of(std::vector<std::string> command) {
  command.push_back("--help");
  return floatwright_says(command).out;
}

// "  plan      the float plan ..." under "Subcommands:".
Words commands_in(const std::string& help) {
  const auto at = help.find("Subcommands:");
  return at == std::string::npos ? Words{} : matches(help.substr(at), "\n  ([a-z]+) ", 1);
}

Words options_in(const std::string& help) { return matches(help, "--[a-z]+"); }

Words kinds() {
  const auto refused = floatwright_says({"plan", "--as", "no_such_kind"}).err;
  const std::string before = "the kinds are ";
  return matches(refused.substr(refused.find(before) + before.size()), "[a-z]+");
}

// What bash offers when the last of the words is to be completed.
Words bash_offers(const std::vector<std::string>& words, const std::string& river_directory = "") {
  std::string line = "source '" + kBash.string() + "'; COMP_WORDS=(";
  for (const auto& word : words) line += "'" + word + "' ";
  line += "); COMP_CWORD=" + std::to_string(words.size() - 1) + "; _floatwright; printf '%s\\n' \"${COMPREPLY[@]}\"";
  const auto ran = run_program({"/bin/bash", "--norc", "-c", line},
                               {{"PATH=/usr/bin:/bin", "HOME=/nowhere", "FLOATWRIGHT_CONFIG=" + river_directory}});
  EXPECT_EQ(ran.err, "");
  Words offered;
  std::istringstream lines{ran.out};
  for (std::string offer; std::getline(lines, offer);)
    if (!offer.empty()) offered.insert(offer);
  return offered;
}

TEST(BashCompletion, OffersEveryCommand) {
  const Words commands = commands_in(help_of({}));
  ASSERT_THAT(commands, IsSupersetOf({"plan", "check", "show"}));
  Words wanted = commands;
  wanted.insert({"--help", "--version"});
  EXPECT_EQ(bash_offers({"floatwright", ""}), wanted);
  Words shown = commands_in(help_of({"show"}));
  shown.insert("--help");
  EXPECT_EQ(bash_offers({"floatwright", "show", ""}), shown);
}

TEST(BashCompletion, OffersEveryOptionOfEachCommandAndNoOther) {
  for (const auto& command : commands_in(help_of({}))) {
    const Words below = commands_in(help_of({command}));
    if (below.empty()) EXPECT_EQ(bash_offers({"floatwright", command, "--"}), options_in(help_of({command}))) << command;
    for (const auto& inner : below)
      EXPECT_EQ(bash_offers({"floatwright", command, inner, "--"}), options_in(help_of({command, inner}))) << inner;
  }
}

TEST(BashCompletion, OffersEveryKindAndGoesOnAfterAComma) {
  EXPECT_EQ(bash_offers({"floatwright", "plan", "--as", ""}), kinds());
  EXPECT_THAT(bash_offers({"floatwright", "plan", "--as", "plan,she"}), UnorderedElementsAre("plan,sheet"));
  EXPECT_THAT(bash_offers({"floatwright", "plan", "--as", "=", "cal"}), UnorderedElementsAre("calendar"));
  EXPECT_THAT(bash_offers({"floatwright", "show", "readings", "--as", ""}), UnorderedElementsAre("csv", "json"));
}

TEST(BashCompletion, OffersTheSpotsOfTheConfigurationNamed) {
  const std::string demo = (kRoot / "config/demo").string();
  EXPECT_THAT(bash_offers({"floatwright", "plan", "--config", demo, "--at", "b"}), UnorderedElementsAre("bend"));
  EXPECT_THAT(bash_offers({"floatwright", "plan", "--at", ""}, demo), UnorderedElementsAre("bend"));
  EXPECT_TRUE(bash_offers({"floatwright", "plan", "--at", ""}, "/no/such/place").empty());
}

TEST(BashCompletion, OffersDirectoriesForAConfiguration) {
  EXPECT_THAT(bash_offers({"floatwright", "check", "--config", (kRoot / "config/sch").string()}),
              UnorderedElementsAre((kRoot / "config/schemas").string()));
}

TEST(ZshCompletion, NamesEveryCommandOptionAndKindAndNoOtherOption) {
  const auto zsh = text_of(kZsh);
  Words options;
  for (const auto& command : commands_in(help_of({}))) {
    EXPECT_THAT(zsh, HasSubstr("'" + command + "["));
    options.merge(options_in(help_of({command})));
    for (const auto& inner : commands_in(help_of({command}))) {
      EXPECT_THAT(zsh, HasSubstr("'" + inner + "["));
      options.merge(options_in(help_of({command, inner})));
    }
  }
  options.merge(options_in(help_of({})));
  EXPECT_EQ(matches(zsh, "--[a-z]+(?=\\[)"), options);
  for (const auto& kind : kinds()) EXPECT_THAT(zsh, HasSubstr("'" + kind + "["));
}

// As at a prompt: zsh writes what it offers after a tab into its own terminal (zshmodules(1), zpty).
TEST(ZshCompletion, CompletesInAShell) {
  if (!std::filesystem::exists("/usr/bin/zsh")) GTEST_SKIP() << "the package zsh is not installed";
  ScratchFolder scratch;
  const std::string line =
      "zmodload zsh/zpty; zpty shell zsh -f -i\n"
      "say() { zpty -w shell \"$1\"; }\n"
      "say 'PS1=; fpath=(" + kZsh.parent_path().string() + " $fpath); autoload -Uz compinit; compinit -D -u; print -n rea; print dy'\n"
      "zpty -r shell out '*ready*'\n"
      "zpty -w -n shell $'floatwright plan --config " + (kRoot / "config/demo").string() + " --at be\\t'\n"
      "zpty -w -n shell $' --paper lett\\t'\n"
      "zpty -r shell out '*letter*'\n"
      "print -r -- \"$out\"; zpty -d shell\n";
  const auto ran = run_program({"/usr/bin/zsh", "-f", "-c", line}, {{"PATH=/usr/bin:/bin", "TERM=dumb", "HOME=" + scratch.path().string()}});
  EXPECT_THAT(ran.out, HasSubstr("bend")) << ran.err;
  EXPECT_THAT(ran.out, HasSubstr("letter")) << ran.err;
}

}  // namespace
}  // namespace floatwright::testing
