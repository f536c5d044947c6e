// A disk that is full or closed, and a run that is killed: nothing half written, what was there still there.
#include <gmock/gmock.h>
#include <signal.h>
#include <sys/wait.h>
#include <unistd.h>

#include "tests/scenarios/scenario.hpp"
#include "tests/support/small_disk.hpp"

namespace floatwright::testing {
namespace {

using ::testing::HasSubstr;

TEST(Disk, ThatCannotBeWrittenIsTold) {
  const DemoCopy demo;
  write_text(demo.folder() / "a_file", "here first");
  const auto ran = demo.plan({"--out", (demo.folder() / "a_file" / "plans").string()});
  EXPECT_EQ(ran.exit_code, 73);
  EXPECT_THAT(ran.err, HasSubstr("a_file"));
  EXPECT_EQ(text_of(demo.folder() / "a_file"), "here first");
}

TEST(Disk, ThatIsFullOnStandardOutputIsTold) {
  const DemoCopy demo;
  const auto ran = run_program({"/bin/sh", "-c",
                                "exec \"$0\" plan --offline --quiet --now " + kDemoNow + " --config " + demo.config().string() + " > /dev/full",
                                FLOATWRIGHT_PROGRAM});
  EXPECT_EQ(ran.exit_code, 74);
  EXPECT_THAT(ran.err, HasSubstr("standard output"));
}

TEST(Disk, ThatIsFullKeepsTheOldPlanAndNoPieces) {
  const DemoCopy demo;
  const auto out = demo.folder() / "small";
  const SmallDisk disk{out};
  if (!disk.mounted()) GTEST_SKIP() << kNoSmallDisk;
  write_text(out / "2027-05-14-plan.json", "the old plan");
  const auto ran = demo.plan({"--as", "json", "--out", out.string()});
  EXPECT_EQ(ran.exit_code, 74) << ran.err;
  EXPECT_EQ(text_of(out / "2027-05-14-plan.json"), "the old plan");
  EXPECT_EQ(std::distance(std::filesystem::directory_iterator{out}, {}), 1);
}

TEST(Disk, ThatIsFullKeepsTheOldSheetAndNoPieces) {
  const DemoCopy demo;
  const auto out = demo.folder() / "small";
  const SmallDisk disk{out};
  if (!disk.mounted()) GTEST_SKIP() << kNoSmallDisk;
  write_text(out / "2027-05-14-sheet.pdf", "the old sheet");
  const auto ran = demo.plan({"--as", "sheet", "--out", out.string()});
  EXPECT_EQ(ran.exit_code, 74) << ran.err;
  EXPECT_THAT(ran.err, HasSubstr("2027-05-14-sheet.pdf"));
  EXPECT_EQ(text_of(out / "2027-05-14-sheet.pdf"), "the old sheet");
  EXPECT_EQ(std::distance(std::filesystem::directory_iterator{out}, {}), 1);
}

// Killed at ever later moments of a run: the plan that was there is there whole, or the new one is.
TEST(Disk, HoldsAWholePlanWheneverTheRunIsKilled) {
  const DemoCopy demo;
  const auto file = demo.folder() / "out" / "2027-05-14-plan.json";
  ASSERT_EQ(demo.plan({"--as", "json", "--out", file.parent_path().string(), "--quiet"}).exit_code, 0);
  const auto whole = text_of(file);
  for (useconds_t wait = 1000; wait < 400000; wait += 20000) {
    const pid_t child = fork();
    if (child == 0) {
      execl(FLOATWRIGHT_PROGRAM, FLOATWRIGHT_PROGRAM, "plan", "--offline", "--quiet", "--now", kDemoNow.c_str(), "--config",
            demo.config().c_str(), "--as", "json", "--out", file.parent_path().c_str(), nullptr);
      _exit(127);
    }
    usleep(wait);
    kill(child, SIGKILL);
    waitpid(child, nullptr, 0);
    ASSERT_EQ(text_of(file), whole);
  }
}

}  // namespace
}  // namespace floatwright::testing
