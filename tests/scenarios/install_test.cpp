// What is installed, tried as it is installed: the examples find their payloads, and nothing lies where it should not.
#include <gmock/gmock.h>

#include <set>

#include "tests/scenarios/scenario.hpp"

namespace floatwright::testing {
namespace {

namespace fs = std::filesystem;
using ::testing::IsSupersetOf;

class Installed : public ::testing::Test {
 protected:
  Installed() {
    const auto ran = run_program({FLOATWRIGHT_CMAKE, "--install", FLOATWRIGHT_BINARY_DIR, "--prefix", (folder_.path() / "usr").string()},
                                 {{"PATH=/usr/bin:/bin"}});
    EXPECT_EQ(ran.exit_code, 0) << ran.err;
  }
  [[nodiscard]] fs::path usr() const { return folder_.path() / "usr"; }
  [[nodiscard]] fs::path examples() const { return usr() / "share/doc/floatwright/examples"; }

 private:
  ScratchFolder folder_;
};

TEST_F(Installed, TheDemoRunsFromItsExamples) {
  const auto ran = run_program({(usr() / "bin/floatwright").string(), "plan", "--config", (examples() / "config/demo").string(),
                                "--offline", "--now", kDemoNow});
  EXPECT_EQ(ran.exit_code, 0) << ran.err;
  EXPECT_EQ(ran.out, text_of(kRoot / "fixtures/golden/lantern_2027-05-14.txt"));
}

// Places by the Filesystem Hierarchy Standard 3.0 and, for completion, those of Debian's shells.
TEST_F(Installed, EveryFileIsInItsPlace) {
  std::set<std::string> files, tops;
  for (const auto& entry : fs::recursive_directory_iterator{usr()})
    if (entry.is_regular_file()) files.insert(entry.path().lexically_relative(usr()).string());
  for (const auto& file : files) tops.insert(file.substr(0, file.find('/', file.find('/') + 1)));
  EXPECT_THAT(files, IsSupersetOf({"bin/floatwright", "share/bash-completion/completions/floatwright",
                                   "share/zsh/vendor-completions/_floatwright", "share/floatwright/schemas/river.schema.json",
                                   "share/doc/floatwright/copyright", "share/doc/floatwright/changelog.Debian.gz",
                                   "share/doc/floatwright/examples/config/cron/crontab.example"}));
  EXPECT_EQ(tops, (std::set<std::string>{"bin/floatwright", "share/bash-completion", "share/doc", "share/floatwright",
                                         "share/lintian", "share/man", "share/zsh"}));
}

TEST_F(Installed, EveryManualPageIsThereCompressed) {
  for (const auto& source : fs::directory_iterator{kRoot / "docs/man"}) {
    const auto page = source.path().stem().string();  // "floatwright-river.5"
    EXPECT_TRUE(fs::exists(usr() / "share/man" / ("man" + page.substr(page.size() - 1)) / (page + ".gz"))) << page << " (needs the package scdoc)";
  }
}

}  // namespace
}  // namespace floatwright::testing
