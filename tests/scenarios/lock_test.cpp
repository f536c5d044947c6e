// One run at a time on a configuration, and a run that is told to end leaves nothing half done.
#include <fcntl.h>
#include <gmock/gmock.h>
#include <signal.h>
#include <sys/file.h>
#include <sys/wait.h>
#include <unistd.h>

#include <array>
#include <fstream>

#include "tests/scenarios/scenario.hpp"

namespace floatwright::testing {
namespace {

using ::testing::HasSubstr;

std::vector<std::string> words_of_a_run(const DemoCopy& demo) {
  return {FLOATWRIGHT_PROGRAM, "plan", "--config", demo.config().string(), "--now", kDemoNow, "--quiet"};
}

// A run stopped half way: nobody reads its standard output, and a pipe holds less than it prints. When the first byte is
// there, the run has passed the taking of its lock.
class StalledRun {
 public:
  explicit StalledRun(const DemoCopy& demo) {
    auto words = words_of_a_run(demo);
    words.insert(words.end(), {"--as", "json,json,json,json"});
    std::array<int, 2> ends{};
    if (pipe(ends.data()) != 0) throw std::runtime_error("no pipe");
    process_ = fork();
    if (process_ == 0) become(words, ends);
    close(ends[1]);
    reading_ = ends[0];
    char first = 0;
    if (read(reading_, &first, 1) != 1) throw std::runtime_error("the run printed nothing");
  }
  ~StalledRun() {
    end(SIGKILL);
    close(reading_);
  }
  StalledRun(const StalledRun&) = delete;
  StalledRun& operator=(const StalledRun&) = delete;

  void end(int signal) {
    if (process_ <= 0) return;
    kill(process_, signal);
    waitpid(process_, nullptr, 0);
    process_ = -1;
  }
  [[nodiscard]] pid_t process() const { return process_; }

 private:
  [[noreturn]] static void become(const std::vector<std::string>& words, const std::array<int, 2>& ends) {
    dup2(ends[1], STDOUT_FILENO);
    close(ends[0]);
    close(ends[1]);
    std::vector<char*> arguments;
    for (const auto& word : words) arguments.push_back(const_cast<char*>(word.c_str()));
    arguments.push_back(nullptr);
    execv(arguments[0], arguments.data());
    _exit(127);
  }

  pid_t process_ = -1;
  int reading_ = -1;
};

TEST(Lock, LetsASecondRunSayWhoHoldsItAndMakeNothing) {
  const DemoCopy demo;
  const StalledRun first{demo};
  const auto out = demo.folder() / "out";
  auto words = words_of_a_run(demo);
  words.insert(words.end(), {"--out", out.string()});
  const auto second = run_program(words);
  EXPECT_EQ(second.exit_code, 75);
  EXPECT_EQ(second.out, "");
  EXPECT_THAT(second.err, HasSubstr("another run"));
  EXPECT_THAT(second.err, HasSubstr(demo.config().string()));
  EXPECT_FALSE(std::filesystem::exists(out));
  if (!std::ifstream{"/proc/locks"}) {
    std::cout << "who holds it is not checked here: this machine has no /proc/locks\n";
    return;
  }
  EXPECT_THAT(second.err, HasSubstr("process " + std::to_string(first.process()) + ", since 20"));
}

TEST(Lock, IsFreeAgainWhateverEndedItsRun) {
  const DemoCopy demo;
  for (const int signal : {SIGTERM, SIGKILL}) {
    StalledRun first{demo};
    ASSERT_EQ(run_program(words_of_a_run(demo)).exit_code, 75);
    first.end(signal);
    EXPECT_EQ(run_program(words_of_a_run(demo)).exit_code, 0);
  }
}

TEST(Lock, OfOneConfigurationLeavesAnotherFree) {
  const DemoCopy held, other;
  const StalledRun first{held};
  EXPECT_EQ(run_program(words_of_a_run(other)).exit_code, 0);
}

TEST(Lock, IsTheSameUnderAnotherPathToTheConfiguration) {
  const DemoCopy demo;
  const StalledRun first{demo};
  std::filesystem::create_directory_symlink(demo.config(), demo.folder() / "link");
  EXPECT_EQ(floatwright_says({"plan", "--config", (demo.folder() / "link").string(), "--now", kDemoNow}).exit_code, 75);
}

TEST(Lock, IsNotAskedOfALookAtWhatIsOnTheDisk) {
  const DemoCopy demo;
  const StalledRun first{demo};
  EXPECT_EQ(demo.plan().exit_code, 0) << "offline, to standard output";
  EXPECT_EQ(demo.check().exit_code, 0);
  EXPECT_EQ(demo.plan({"--out", (demo.folder() / "out").string()}).exit_code, 75) << "it writes";
}

TEST(Lock, NeedsNoRightToWriteAndLeavesNoFile) {
  const DemoCopy demo;
  const auto count = [&] { return std::distance(std::filesystem::directory_iterator{demo.config()}, {}); };
  const auto before = count();
  std::filesystem::permissions(demo.config(), std::filesystem::perms{0555});
  EXPECT_EQ(run_program(words_of_a_run(demo)).exit_code, 0);
  EXPECT_EQ(count(), before);
  std::filesystem::permissions(demo.config(), std::filesystem::perms{0755});
}

std::size_t entries(const std::filesystem::path& folder) {
  std::error_code none;
  std::size_t count = 0;
  for (std::filesystem::directory_iterator entry{folder, none}, end; !none && entry != end; entry.increment(none)) ++count;
  return count;
}

// Starts the words and tells the run to end as soon as its folder holds so many names, be they whole files or not.
void end_at(const std::vector<std::string>& words, const std::filesystem::path& out, std::size_t names) {
  std::vector<char*> arguments;
  for (const auto& word : words) arguments.push_back(const_cast<char*>(word.c_str()));
  arguments.push_back(nullptr);
  const pid_t child = fork();
  if (child == 0) {
    execv(arguments[0], arguments.data());
    _exit(127);
  }
  while (entries(out) < names && waitpid(child, nullptr, WNOHANG) == 0) usleep(100);
  kill(child, SIGTERM);
  waitpid(child, nullptr, 0);
}

// Told to end in the middle of writing several files: every file there is whole, and there is nothing else in the folder.
TEST(Terminating, LeavesWholeFilesAndNoPieces) {
  const DemoCopy demo;
  const auto out = demo.folder() / "out", once = demo.folder() / "once";
  auto words = words_of_a_run(demo);
  words.insert(words.end(), {"--as", "plan,json,calendar,map", "--out", once.string()});
  ASSERT_EQ(run_program(words).exit_code, 0);
  ASSERT_EQ(entries(once), 5U);
  words.back() = out.string();
  for (const std::size_t names : {1U, 2U, 4U}) {
    std::filesystem::remove_all(out);
    end_at(words, out, names);
    EXPECT_GE(entries(out), 1U);
    for (const auto& entry : std::filesystem::directory_iterator{out}) {
      const auto whole = once / entry.path().filename();
      ASSERT_TRUE(std::filesystem::exists(whole)) << entry.path();
      EXPECT_EQ(text_of(entry.path()), text_of(whole));
    }
  }
}

}  // namespace
}  // namespace floatwright::testing
