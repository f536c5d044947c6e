// Fishing tables in a run: kept, silent, and no worse off without them. Swings alone, so that few tables are needed.
#include <gmock/gmock.h>

#include <thread>

#include "tests/scenarios/scenario.hpp"

namespace floatwright::testing {
namespace {

using ::testing::HasSubstr;
using ::testing::Not;

class Tables : public ::testing::Test {
 protected:
  Tables() {
    demo_.replace("settings.json", R"("methods": { "swing": 1.0, "strip": 1.0, "dry": 0.9, "indicator": 0.7 })",
                  R"("methods": { "swing": 1.0 })");
  }
  [[nodiscard]] std::filesystem::path cache() const { return demo_.folder() / "cache"; }
  [[nodiscard]] Where here() const { return {{"CACHE_DIRECTORY=" + cache().string()}, "/"}; }
  [[nodiscard]] Ran plan(std::vector<std::string> more) const { return demo_.plan(std::move(more), here()); }
  DemoCopy demo_;
};

TEST_F(Tables, AreKeptAndTheNextPlanIsTheSame) {
  const Ran first = plan({"--quiet"});
  EXPECT_EQ(first.exit_code, 0);
  EXPECT_EQ(first.err, "");
  EXPECT_FALSE(std::filesystem::is_empty(cache() / "tables"));
  EXPECT_EQ(plan({}).out, first.out);
}

TEST_F(Tables, ThatCannotBeKeptAreToldOnlyToWhoAsks) {
  write_text(cache(), "in the way");
  const Ran silent = plan({}), told = plan({"--verbose"});
  EXPECT_EQ(silent.exit_code, 0);
  EXPECT_EQ(silent.err, "");
  EXPECT_THAT(told.err, HasSubstr(cache().string()));
  EXPECT_THAT(told.err, HasSubstr("CACHE_DIRECTORY"));
  EXPECT_EQ(told.out, silent.out);
  EXPECT_EQ(demo_.plan().out, silent.out) << "with the tables of this build";
}

// taskset(1) of util-linux. Every number, not only what is printed for people.
TEST_F(Tables, GiveOneCoreTheSameDayAsAll) {
  if (std::thread::hardware_concurrency() < 2) GTEST_SKIP() << "this machine has one core";
  const std::vector<std::string> words{FLOATWRIGHT_PROGRAM, "plan", "--config", demo_.config().string(), "--offline",
                                       "--now", kDemoNow, "--as", "json"};
  std::vector<std::string> on_one{"/usr/bin/taskset", "-c", "0"};
  on_one.insert(on_one.end(), words.begin(), words.end());
  EXPECT_EQ(run_program(on_one, here()).out, run_program(words, here()).out);
}

// script(1) of util-linux runs it on a terminal.
TEST_F(Tables, ShowHowFarTheyAreOnATerminalAlone) {
  const std::string command =
      std::string{FLOATWRIGHT_PROGRAM} + " plan --offline --config " + demo_.config().string() + " --now " + kDemoNow;
  const auto on_a_terminal = [&](const std::string& more) {
    return run_program({"/usr/bin/script", "-qec", command + more, "/dev/null"}, here());
  };
  const Ran silent = on_a_terminal(" --quiet --units metric");
  EXPECT_EQ(silent.exit_code, 0);
  EXPECT_THAT(silent.out, Not(HasSubstr("fishing tables")));
  std::filesystem::remove_all(cache());
  EXPECT_THAT(on_a_terminal("").out, HasSubstr("fishing tables [##"));
  EXPECT_THAT(on_a_terminal("").out, Not(HasSubstr("fishing tables"))) << "they are there";
}

}  // namespace
}  // namespace floatwright::testing
