// As cron runs it: no environment, the root folder, a home that cannot be written, nobody at the terminal.
#include <gmock/gmock.h>

#include "tests/scenarios/scenario.hpp"

namespace floatwright::testing {
namespace {

TEST(Cron, RunsWithNoEnvironmentAtAll) {
  const DemoCopy demo;
  const auto bare = demo.plan({"--quiet"}, {{}, "/"});
  EXPECT_EQ(bare.exit_code, 0);
  EXPECT_EQ(bare.err, "") << "cron mails what stands on standard error";
  const auto full = demo.plan({"--quiet"}, {{"HOME=/root", "LANG=de_DE.UTF-8", "LC_ALL=de_DE.UTF-8", "TZ=Asia/Tokyo", "PATH=/usr/bin"}, "/"});
  EXPECT_EQ(bare.out, full.out) << "the answer must not depend on the machine's zone or language";
}

TEST(Cron, WritesNothingButWhatWasAskedFor) {
  const DemoCopy demo;
  const auto out = demo.folder() / "out";
  const auto ran = demo.plan({"--quiet", "--as", "plan,json", "--out", out.string()}, {{"HOME=/proc/nowhere"}, "/"});
  EXPECT_EQ(ran.exit_code, 0) << ran.err;
  EXPECT_EQ(ran.out, "");
  std::vector<std::string> names;
  for (const auto& entry : std::filesystem::directory_iterator(out)) names.push_back(entry.path().filename().string());
  EXPECT_THAT(names, ::testing::UnorderedElementsAre("2027-05-14-plan.txt", "2027-05-14-plan.json"));
}

TEST(Cron, TakesTheConfigurationFromTheEnvironment) {
  const DemoCopy demo;
  const auto ran = floatwright_says({"plan", "--offline", "--now", kDemoNow, "--quiet"},
                                    {{"FLOATWRIGHT_CONFIG=" + demo.config().string()}, "/"});
  EXPECT_EQ(ran.exit_code, 0) << ran.err;
}

TEST(Cron, PlansTodayBeforeTheDayTurnsAndTomorrowAfter) {
  const DemoCopy demo;
  const auto day_at = [&](const std::string& now) {
    const auto ran = floatwright_says({"plan", "--config", demo.config().string(), "--offline", "--now", now, "--as", "json"});
    const auto at = ran.out.find("\"day\": \"");
    return at == std::string::npos ? ran.err : ran.out.substr(at + 8, 10);
  };
  EXPECT_EQ(day_at("2027-05-13T09:59:00-06:00"), "2027-05-13");
  EXPECT_EQ(day_at("2027-05-13T10:00:00-06:00"), "2027-05-14");
  EXPECT_EQ(day_at("2027-05-14T03:00:00Z"), "2027-05-14") << "21:00 on the river";
}

TEST(Cron, SaysWhichReadingsAreOld) {
  const DemoCopy demo;
  const auto ran = floatwright_says({"plan", "--config", demo.config().string(), "--offline", "--now", "2027-05-14T04:30:00-06:00"});
  EXPECT_EQ(ran.exit_code, 75);
  EXPECT_THAT(ran.err, ::testing::HasSubstr("6 h"));
}

TEST(Cron, SetsTheTimeBeforeAMessageThatGoesToALog) {
  const auto ran = floatwright_says({"plan", "--config", "/nowhere", "--offline"});
  EXPECT_THAT(ran.err, ::testing::ContainsRegex("(^|\n)20[0-9][0-9]-[01][0-9]-[0-3][0-9]T[0-2][0-9]:[0-5][0-9]:[0-6][0-9]Z floatwright: "));
}

// script(1) of util-linux gives the program a terminal.
TEST(Cron, LeavesTheTimeOutOnATerminal) {
  const auto ran = run_program({"/usr/bin/script", "-qec", std::string{FLOATWRIGHT_PROGRAM} + " plan --config /nowhere --offline", "/dev/null"},
                               {{"PATH=/usr/bin:/bin", "TERM=dumb"}, "/"});
  EXPECT_THAT(ran.out, ::testing::ContainsRegex("(^|\n)floatwright: "));
  EXPECT_THAT(ran.out, ::testing::Not(::testing::ContainsRegex("Z floatwright: ")));
}

}  // namespace
}  // namespace floatwright::testing
