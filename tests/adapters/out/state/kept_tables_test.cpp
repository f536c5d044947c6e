#include "adapters/out/state/kept_tables.hpp"

#include <gmock/gmock.h>
#include <sys/stat.h>
#include <sys/wait.h>
#include <unistd.h>

#include <cstring>
#include <thread>

#include "adapters/out/state/cache_directory.hpp"
#include "adapters/out/state/table_file.hpp"
#include "tests/engine/tackle/rack.hpp"
#include "tests/support/run_program.hpp"
#include "tests/support/small_disk.hpp"

namespace floatwright::testing {
namespace {

namespace fs = std::filesystem;
using Each = std::function<void(std::size_t, const std::function<void(std::size_t)>&)>;

const DriftLimits kLimits;

void one_by_one(std::size_t count, const std::function<void(std::size_t)>& work) {
  for (std::size_t i = 0; i < count; ++i) work(i);
}
void a_thread_each(std::size_t count, const std::function<void(std::size_t)>& work) {
  std::vector<std::jthread> threads;
  for (std::size_t i = 0; i < count; ++i) threads.emplace_back([&work, i] { work(i); });
}

class KeptTables : public ::testing::Test {
 protected:
  KeptTables() {
    for (const std::size_t line : {rack::kTip3, rack::kTip5, rack::kTip7}) {
      const Technique tight{Method::Swing, Mending::Tight, {}, {}, Platform::Anchored};
      needed_.orders.push_back(
          table_order(tackle_, {line, {}, rack::kWeighted, {}}, metres(12), 0.0, {tight}, kLimits).value());
    }
  }
  [[nodiscard]] TableShelf shelf() const { return {scratch_.path() / "cache"}; }
  [[nodiscard]] const TableOrder& order(std::size_t i = 0) const { return needed_.orders[i]; }
  [[nodiscard]] fs::path file(std::size_t i = 0) const { return shelf().cache / "tables" / table_file_name(order(i)); }
  // How many had to be worked out is counted.
  TablesMade got(const std::optional<TableShelf>& from, const Each& each = one_by_one) {
    made_ = 0;
    return kept_or_made(from, needed_, {tackle_, kLimits, each, [this](std::size_t, std::size_t) { ++made_; }});
  }
  [[nodiscard]] std::string as_bytes(const TablesMade& made) const {
    std::string all;
    for (std::size_t i = 0; i < made.sets.size(); ++i) all += table_file(order(i), made.sets[i]);
    return all;
  }
  [[nodiscard]] std::size_t files() const {
    const fs::directory_iterator all{shelf().cache / "tables"};
    return static_cast<std::size_t>(std::distance(begin(all), end(all)));
  }
  static void age(const fs::path& path, std::chrono::hours by) {
    fs::last_write_time(path, fs::file_time_type::clock::now() - by);
  }

  ScratchFolder scratch_;
  Tackle tackle_ = rack::tackle();
  TablesNeeded needed_;
  std::size_t made_ = 0;
};

TEST_F(KeptTables, AreWorkedOutOnceAndComeBackAsTheyWere) {
  const std::string first = as_bytes(got(shelf()));
  EXPECT_EQ(made_, 3u);
  EXPECT_EQ(as_bytes(got(shelf())), first);
  EXPECT_EQ(made_, 0u);
}

TEST_F(KeptTables, AreTheSameWhateverTheNumberOfThreads) {
  const std::string first = as_bytes(got(std::nullopt));
  const mode_t before = ::umask(022);
  EXPECT_EQ(as_bytes(got(shelf(), a_thread_each)), first);
  EXPECT_EQ(as_bytes(got(shelf(), a_thread_each)), first);
  EXPECT_EQ(made_, 0u);
  EXPECT_EQ(::umask(before), 022u) << "it is the whole process's";
}

// Every byte is one that matters: a few hundred of them, turned over one at a time.
TEST_F(KeptTables, ThatAreBrokenAnywhereCountAsNone) {
  const std::string whole = table_file(order(), fishing_tables(tackle_, order(), kLimits));
  ASSERT_TRUE(tables_from(whole, order()));
  for (std::size_t at = 0; at < whole.size(); at += at < 300 ? 1 : 97) {
    std::string broken = whole;
    broken[at] = static_cast<char>(~broken[at]);
    ASSERT_FALSE(tables_from(broken, order())) << "byte " << at;
  }
  for (const std::size_t length : {std::size_t{0}, std::size_t{5}, whole.size() / 2, whole.size() - 1})
    EXPECT_FALSE(tables_from(whole.substr(0, length), order())) << length << " bytes";
  EXPECT_FALSE(tables_from(whole + " ", order()));
  EXPECT_FALSE(tables_from(whole, order(1))) << "another rig's";
}

TEST_F(KeptTables, WithANumberThatCannotBeCountAsNone) {
  TableSet tables = fishing_tables(tackle_, order(), kLimits);
  tables[0]->nodes[7].fly_m[3] = std::nanf("");
  EXPECT_FALSE(tables_from(table_file(order(), tables), order()));
  tables[0]->nodes[7].fly_m[3] = -1.0f;
  EXPECT_FALSE(tables_from(table_file(order(), tables), order()));
}

TEST_F(KeptTables, WithoutAnAnswerStayWithout) {
  const auto back = tables_from(table_file(order(), {std::nullopt}), order());
  ASSERT_TRUE(back);
  EXPECT_FALSE(back->front());
}

TEST_F(KeptTables, ThatAreBrokenAreWrittenAnew) {
  const std::string first = as_bytes(got(shelf()));
  const std::string whole = text_of(file());
  for (const std::string& found : {std::string{}, whole.substr(0, 1000), std::string(whole.size(), 'x')}) {
    write_text(file(), found);
    EXPECT_EQ(as_bytes(got(shelf())), first);
    EXPECT_EQ(made_, 1u);
    EXPECT_EQ(text_of(file()), whole);
  }
}

TEST_F(KeptTables, InTheWayOfAFolderAreWorkedOutAndWhyIsKnown) {
  write_text(shelf().cache, "in the way");
  const TablesMade made = got(shelf());
  EXPECT_EQ(as_bytes(made), as_bytes(got(std::nullopt)));
  ASSERT_TRUE(made.not_kept);
  EXPECT_THAT(made.not_kept->what, ::testing::HasSubstr("cache"));
  EXPECT_EQ(text_of(shelf().cache), "in the way");
}

TEST_F(KeptTables, OnAFullDiskAreWorkedOutAndLeaveNoPieces) {
  const SmallDisk disk{shelf().cache};
  if (!disk.mounted()) GTEST_SKIP() << "mounting a small tmpfs needs root";
  const TablesMade made = got(shelf());
  EXPECT_EQ(as_bytes(made), as_bytes(got(std::nullopt)));
  ASSERT_TRUE(made.not_kept);
  EXPECT_EQ(made.not_kept->exit_code, kExitWriteFailed);
  EXPECT_EQ(files(), 0u);
}

TEST_F(KeptTables, UsedLongestAgoGoWhenThereAreTooMany) {
  TableShelf small = shelf();
  (void)got(small);
  small.most_bytes = 2 * fs::file_size(file()) + 100;
  age(file(0), std::chrono::hours{50});
  age(file(1), std::chrono::hours{70});
  ASSERT_TRUE(kept_tables(small, order(1)));  // used now
  throw_away_oldest(small);
  EXPECT_EQ(files(), 2u);
  EXPECT_FALSE(fs::exists(file(0)));
}

TEST_F(KeptTables, WithinBoundsAllStay) {
  (void)got(shelf());
  throw_away_oldest(shelf());
  EXPECT_EQ(files(), 3u);
}

TEST_F(KeptTables, PiecesOfAKilledRunGoAfterADay) {
  (void)got(shelf());
  const fs::path fresh = shelf().cache / "tables/.a.tables.AAAAAA", old = shelf().cache / "tables/.a.tables.BBBBBB";
  write_text(fresh, "half");
  write_text(old, "half");
  age(old, std::chrono::hours{30});
  throw_away_oldest(shelf());
  EXPECT_TRUE(fs::exists(fresh));  // another run may be writing it
  EXPECT_FALSE(fs::exists(old));
}

TEST_F(KeptTables, OfTwoProcessesAtOnceAreWhole) {
  const std::string wanted = as_bytes(got(std::nullopt));
  std::array<pid_t, 4> children{};
  for (pid_t& child : children) {
    child = ::fork();
    if (child != 0) continue;
    bool right = true;
    for (int round = 0; round < 5; ++round) {
      std::error_code gone;
      fs::remove(file(static_cast<std::size_t>(round) % 3), gone);
      right = right && as_bytes(got(shelf())) == wanted;
    }
    ::_exit(right ? 0 : 1);
  }
  for (const pid_t child : children) {
    int status = -1;
    ASSERT_EQ(::waitpid(child, &status, 0), child);
    EXPECT_EQ(status, 0);
  }
  EXPECT_EQ(as_bytes(got(shelf())), wanted);
  EXPECT_LE(files(), 3u);
}

// XDG Base Directory Specification 0.8 and systemd.exec(5), CacheDirectory=.
TEST(CacheDirectory, IsTheServiceManagersThenTheUsersThenTheHomes) {
  const ScratchFolder scratch;
  for (const char* variable : {"CACHE_DIRECTORY", "XDG_CACHE_HOME", "HOME"}) ::unsetenv(variable);
  EXPECT_FALSE(cache_directory());
  EXPECT_THAT(cache_directory().error().what, ::testing::HasSubstr("CACHE_DIRECTORY"));
  ::setenv("HOME", scratch.path().c_str(), 1);
  EXPECT_EQ(cache_directory().value(), scratch.path() / ".cache/floatwright");
  ::setenv("XDG_CACHE_HOME", (scratch.path() / "xdg").c_str(), 1);
  EXPECT_EQ(cache_directory().value(), scratch.path() / "xdg/floatwright");
  ::setenv("CACHE_DIRECTORY", ((scratch.path() / "a").string() + ":/b").c_str(), 1);
  EXPECT_EQ(cache_directory().value(), scratch.path() / "a");
}

}  // namespace
}  // namespace floatwright::testing
