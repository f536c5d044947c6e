#include "adapters/out/files/whole_file.hpp"

#include <fcntl.h>
#include <gmock/gmock.h>
#include <poll.h>
#include <signal.h>
#include <sys/mount.h>
#include <sys/resource.h>
#include <sys/stat.h>
#include <sys/wait.h>
#include <unistd.h>

#include <cerrno>
#include <cstring>
#include <fstream>
#include <iterator>

namespace floatwright {
namespace {

using testing::HasSubstr;

std::string content_of(const std::filesystem::path& path) {
  std::ifstream file(path, std::ios::binary);
  return {std::istreambuf_iterator<char>(file), {}};
}

std::size_t files_in(const std::filesystem::path& folder) {
  return static_cast<std::size_t>(std::distance(std::filesystem::directory_iterator(folder), {}));
}

class WholeFile : public testing::Test {
 protected:
  WholeFile() {
    std::string pattern = (std::filesystem::temp_directory_path() / "floatwright-XXXXXX").string();
    folder_ = ::mkdtemp(pattern.data());
  }
  ~WholeFile() override { std::filesystem::remove_all(folder_); }

  std::filesystem::path folder_;
};

// A limit on the size of files stands for a full disk: write() then fails half-way, as it does there.
template <class Write>
int ended_by_a_full_disk(const Write& write) {
  const pid_t child = ::fork();
  if (child == 0) {
    ::signal(SIGXFSZ, SIG_IGN);
    const rlimit small{4096, 4096};
    ::setrlimit(RLIMIT_FSIZE, &small);
    const auto written = write();
    ::_exit(written ? 0 : written.error().exit_code);
  }
  int status = 0;
  if (child < 0 || ::waitpid(child, &status, 0) != child || !WIFEXITED(status)) return -1;
  return WEXITSTATUS(status);
}

TEST_F(WholeFile, IsThereWithItsBytesAndNothingBesideIt) {
  const std::string bytes("plan\0\xff\n", 7);
  ASSERT_TRUE(write_whole_file(folder_ / "plan.txt", bytes));
  EXPECT_EQ(content_of(folder_ / "plan.txt"), bytes);
  EXPECT_EQ(files_in(folder_), 1u);
}

TEST_F(WholeFile, ReplacesTheOldOneAndKeepsItsMode) {
  ASSERT_TRUE(write_whole_file(folder_ / "plan.txt", "old"));
  ASSERT_EQ(::chmod((folder_ / "plan.txt").c_str(), 0640), 0);
  ASSERT_TRUE(write_whole_file(folder_ / "plan.txt", "new"));
  EXPECT_EQ(content_of(folder_ / "plan.txt"), "new");
  EXPECT_EQ(std::filesystem::status(folder_ / "plan.txt").permissions(), std::filesystem::perms(0640));
}

TEST_F(WholeFile, MayBeReadAsTheUmaskSays) {
  const mode_t before = ::umask(022);
  ASSERT_TRUE(write_whole_file(folder_ / "plan.txt", "x"));
  ::umask(before);
  EXPECT_EQ(std::filesystem::status(folder_ / "plan.txt").permissions(), std::filesystem::perms(0644));
}

TEST_F(WholeFile, CannotBeMadeWhereThereIsNoFolder) {
  const auto nowhere = write_whole_file(folder_ / "none" / "plan.txt", "x");
  ASSERT_FALSE(nowhere);
  EXPECT_EQ(nowhere.error().exit_code, 73);
  EXPECT_THAT(nowhere.error().what, HasSubstr((folder_ / "none" / "plan.txt").string()));
  ASSERT_TRUE(write_whole_file(folder_ / "file", "x"));
  const auto under_a_file = write_whole_file(folder_ / "file" / "plan.txt", "x");
  ASSERT_FALSE(under_a_file);
  EXPECT_EQ(under_a_file.error().exit_code, 73);
  EXPECT_EQ(files_in(folder_), 1u);
}

TEST_F(WholeFile, DoesNotTakeTheNameOfAFolder) {
  std::filesystem::create_directory(folder_ / "plan");
  const auto written = write_whole_file(folder_ / "plan", "x");
  ASSERT_FALSE(written);
  EXPECT_EQ(written.error().exit_code, 73);
  EXPECT_EQ(files_in(folder_), 1u);
}

TEST_F(WholeFile, LeavesTheOldOneWhenTheWritingFailsHalfWay) {
  ASSERT_TRUE(write_whole_file(folder_ / "plan.txt", "old"));
  EXPECT_EQ(ended_by_a_full_disk([&] { return write_whole_file(folder_ / "plan.txt", std::string(100000, 'n')); }), 74);
  EXPECT_EQ(content_of(folder_ / "plan.txt"), "old");
  EXPECT_EQ(files_in(folder_), 1u);
}

TEST_F(WholeFile, LeavesTheOldOneOnADiskThatIsReallyFull) {
  if (::mount("none", folder_.c_str(), "tmpfs", 0, "size=64k") != 0) {
    GTEST_SKIP() << "needs the right to mount a small file system: " << std::strerror(errno);
  }
  ASSERT_TRUE(write_whole_file(folder_ / "plan.txt", "old"));
  const auto written = write_whole_file(folder_ / "plan.txt", std::string(200000, 'n'));
  EXPECT_EQ(content_of(folder_ / "plan.txt"), "old");
  EXPECT_EQ(files_in(folder_), 1u);
  ::umount(folder_.c_str());
  ASSERT_FALSE(written);
  EXPECT_EQ(written.error().exit_code, 74);
  EXPECT_THAT(written.error().what, HasSubstr("disk is full"));
}

// Writes one letter, many times over, again and again, telling after each that it did, until it is killed.
[[noreturn]] void write_for_ever(const std::filesystem::path& path, int told) {
  for (unsigned i = 0;; ++i) {
    if (!write_whole_file(path, std::string(300000, static_cast<char>('a' + i % 26)))) ::_exit(1);
    if (::write(told, "x", 1) != 1) ::_exit(2);
  }
}

TEST_F(WholeFile, IsWholeHoweverOftenTheWriterIsKilled) {
  const auto path = folder_ / "plan.txt";
  for (int round = 0; round < 50; ++round) {
    int told[2] = {-1, -1};
    ASSERT_EQ(::pipe(told), 0);
    const pid_t child = ::fork();
    ASSERT_GE(child, 0);
    if (child == 0) write_for_ever(path, told[1]);
    ::close(told[1]);
    char first = 0;
    ASSERT_EQ(::read(told[0], &first, 1), 1) << "the writer wrote nothing";
    // A wait of another length each round meets the writer at another point of its work.
    pollfd none{-1, 0, 0};
    ::poll(&none, 1, round % 7);
    ASSERT_EQ(::kill(child, SIGKILL), 0);
    int status = 0;
    ASSERT_EQ(::waitpid(child, &status, 0), child);
    ::close(told[0]);
    ASSERT_TRUE(WIFSIGNALED(status)) << "the writer ended by itself";
    const std::string content = content_of(path);
    ASSERT_EQ(content.size(), 300000u);
    ASSERT_EQ(content.find_first_not_of(content.front()), std::string::npos) << "two plans in one file";
  }
}

TEST_F(WholeFile, IsAddedToAtItsEndAndMadeWhereItIsNotThere) {
  ASSERT_TRUE(add_to_file(folder_ / "log.jsonl", "one\n"));
  ASSERT_TRUE(add_to_file(folder_ / "log.jsonl", "two\n"));
  EXPECT_EQ(content_of(folder_ / "log.jsonl"), "one\ntwo\n");
  const auto nowhere = add_to_file(folder_ / "none" / "log.jsonl", "one\n");
  ASSERT_FALSE(nowhere);
  EXPECT_EQ(nowhere.error().exit_code, 73);
}

TEST_F(WholeFile, IsCutBackToWhatItWasWhenTheAddingFailsHalfWay) {
  ASSERT_TRUE(add_to_file(folder_ / "log.jsonl", "old\n"));
  EXPECT_EQ(ended_by_a_full_disk([&] { return add_to_file(folder_ / "log.jsonl", std::string(100000, 'n')); }), 74);
  EXPECT_EQ(content_of(folder_ / "log.jsonl"), "old\n");
}

[[noreturn]] void add_for_ever(const std::filesystem::path& path, int told) {
  for (;;) {
    if (!add_to_file(path, std::string(3000, 'n') + "\n")) ::_exit(1);
    if (::write(told, "x", 1) != 1) ::_exit(2);
  }
}

TEST_F(WholeFile, HasNoLineCutButItsLastHoweverOftenTheWriterIsKilled) {
  const auto path = folder_ / "log.jsonl";
  for (int round = 0; round < 20; ++round) {
    int told[2] = {-1, -1};
    ASSERT_EQ(::pipe(told), 0);
    const pid_t child = ::fork();
    ASSERT_GE(child, 0);
    if (child == 0) add_for_ever(path, told[1]);
    ::close(told[1]);
    char first = 0;
    ASSERT_EQ(::read(told[0], &first, 1), 1) << "the writer wrote nothing";
    ASSERT_EQ(::kill(child, SIGKILL), 0);
    ASSERT_EQ(::waitpid(child, nullptr, 0), child);
    ::close(told[0]);
    std::ifstream lines(path);
    std::size_t whole = 0;
    for (std::string line; std::getline(lines, line) && !lines.eof(); ++whole) ASSERT_EQ(line, std::string(3000, 'n'));
    ASSERT_GE(whole, 1u);
    std::filesystem::remove(path);
  }
}

}  // namespace
}  // namespace floatwright
