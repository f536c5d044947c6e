// Several processes at one archive, and a process that ends in the middle of its work.
#include <SQLiteCpp/SQLiteCpp.h>
#include <fcntl.h>
#include <signal.h>
#include <sys/file.h>

#include <map>
#include <random>
#include <thread>

#include "tests/adapters/in/archive/archive_file.hpp"
#include "tests/adapters/in/archive/own_process.hpp"

namespace floatwright::testing {
namespace {

using ::testing::HasSubstr;
using ::testing::IsEmpty;
using ::testing::SizeIs;

using ArchiveWriters = ArchiveFile;

// An exit code; why not, on standard error.
template <class T>
int well(const Result<T>& result) {
  if (!result) std::cerr << result.error().what << std::endl;
  return result ? 0 : result.error().exit_code;
}

int store_once(const std::filesystem::path& file, const std::vector<GaugeSeries>& series) {
  auto archive = Archive::open_to_write(file, at(0));
  return archive ? well(archive->store(series, at(100))) : well(archive);
}

TEST_F(ArchiveWriters, AtOnceLoseNoRow) {
  const auto write = [&](int offset) {
    return [this, offset] {
      for (int i = 0, code = 0; i < 20; ++i) {
        GaugeSeries series = flow_of(quarter_hours(50));
        series.series_id = std::to_string(offset + i);
        if ((code = store_once(file_, {series, flow_of(quarter_hours(50 * i + offset))})) != 0) return code;
        const Asked asked{kStation, "service", at(10 * i), at(10 * i + 5), at(100 + offset)};
        if ((code = well(writing().note_asked(asked))) != 0) return code;
      }
      return 0;
    };
  };
  const pid_t one = start_process(write(0)), other = start_process(write(100));
  EXPECT_EQ(exit_code_of(one), 0);
  EXPECT_EQ(exit_code_of(other), 0);
  EXPECT_EQ(rows_in(writing()), 2u * 20 * 50 + 50 * 19 + 100);
  EXPECT_THAT(writing().asked(kStation).value(), SizeIs(20));
  EXPECT_THAT(writing().integrity().value(), IsEmpty());
}

TEST_F(ArchiveWriters, AtOnceMakeOneFile) {
  for (int i = 0; i < 12; ++i) {
    const auto file = folder_.path() / std::to_string(i);
    const auto store = [&] { return store_once(file, {flow_of(quarter_hours(10))}); };
    const pid_t one = start_process(store), other = start_process(store);
    EXPECT_EQ(exit_code_of(one), 0);
    EXPECT_EQ(exit_code_of(other), 0);
    EXPECT_EQ(rows_in(Archive::open_to_read(file).value()), 10u);
  }
}

TEST_F(ArchiveWriters, ThatDoNotEndMakeTheOtherSayThatItIsToBeTriedLater) {
  fill(10);
  SQLite::Database other{file_, SQLite::OPEN_READWRITE};
  other.exec("BEGIN IMMEDIATE");
  Archive archive = Archive::open_to_write(file_, at(0), std::chrono::milliseconds{20}).value();
  const auto refused = archive.store({flow_of(quarter_hours(20))}, at(100));
  ASSERT_FALSE(refused);
  EXPECT_EQ(refused.error().exit_code, kExitTryLater);
  EXPECT_THAT(refused.error().what, HasSubstr("Another run is writing"));
  EXPECT_EQ(rows_in(Archive::open_to_read(file_).value()), 10u) << "readers do not wait";
}

TEST_F(ArchiveWriters, LeaveADamagedFileToTheOneThatPutsItAside) {
  folder_.put("readings.sqlite3", std::string(10000, 'x'));
  const int other = ::open(file_.c_str(), O_RDONLY | O_CLOEXEC);
  ASSERT_EQ(::flock(other, LOCK_EX), 0);
  const auto refused = Archive::open_to_write(file_, at(0));
  ASSERT_FALSE(refused);
  EXPECT_EQ(refused.error().exit_code, kExitTryLater);
  EXPECT_EQ(folder_.get("readings.sqlite3"), std::string(10000, 'x'));
  ::close(other);
  EXPECT_THAT(writing().notes(), SizeIs(1));
}

// --- kill -9

// Of one store: its rows are at instants of its own, and all bear its number. Some are long enough to take a while.
GaugeSeries batch(int number) {
  std::vector<Reading> rows;
  const int count = number % 5 == 0 ? 3000 : 40;
  for (int i = 0; i < count; ++i) rows.push_back({at(3000 * number + i), double(number), {Mark::Provisional}});
  return flow_of(std::move(rows));
}

// A row that every store changes, so that revisions are written too.
GaugeSeries changed_by(int number) {
  GaugeSeries out = flow_of({{at(0), double(number), {}}});
  out.series_id = "changes";
  return out;
}

// Stores and says so until it is killed; now and then it closes the archive, which brings its log into the file.
int store_for_ever(const std::filesystem::path& file, int first, int told) {
  for (int number = first;; number += 3) {
    Archive archive = Archive::open_to_write(file, at(0)).value();
    for (int i = 0; i < 3; ++i) {
      const int stored = number + i;
      if (!archive.store({changed_by(stored), batch(stored)}, at(stored))) return 1;
      if (::write(told, &stored, sizeof stored) != sizeof stored) return 2;
    }
  }
}

class ArchiveKilled : public ArchiveFile, public ::testing::WithParamInterface<unsigned> {
 protected:
  // Kills a writer after `life`, counted from its start or from its first report. The number of the last store that was
  // reported before the end came; `first` - 1: none.
  [[nodiscard]] int killed_after(std::chrono::microseconds life, bool of_the_first_report, int first) const {
    int ends[2];
    if (::pipe(ends) != 0) return -1;
    const pid_t writer = start_process([&] { return store_for_ever(file_, first, ends[1]); });
    ::close(ends[1]);
    int last = first - 1, told = 0;
    if (of_the_first_report && ::read(ends[0], &told, sizeof told) == sizeof told) last = told;
    std::this_thread::sleep_for(life);
    ::kill(writer, SIGKILL);
    EXPECT_EQ(exit_code_of(writer), 128 + SIGKILL);
    while (::read(ends[0], &told, sizeof told) == sizeof told) last = told;
    ::close(ends[0]);
    return last;
  }

  // What was reported is there to the last row; the store that was under way is there whole or not at all.
  void expect_whole(int first, int last) const {
    const Archive archive = writing();
    EXPECT_THAT(archive.notes(), IsEmpty());
    EXPECT_THAT(archive.integrity().value(), IsEmpty());
    const auto all = archive.series_of(kStation, at(3000 * first), Instant::max()).value();
    std::map<int, std::size_t> rows;
    for (const GaugeSeries& series : all)
      for (const Reading& row : series.readings) ++rows[int(row.si.value())];
    for (int number = first; number <= last + 1; ++number) {
      if (number > last && !rows.contains(number)) continue;
      EXPECT_EQ(rows[number], batch(number).readings.size()) << "of store " << number << ", reported up to " << last;
    }
  }
};

constexpr int kKillsEach = 52;

TEST_P(ArchiveKilled, AtAnyMomentIsSoundAndHasAllThatWasReported) {
  std::minstd_rand draw(GetParam());
  std::uniform_int_distribution<int> life(0, 15000);
  int first = 1, reported = 0;
  for (int kill = 0; kill < kKillsEach; ++kill) {
    if (kill % 13 == 0) std::filesystem::remove(file_);  // the making of a file is cut short too
    const int last = killed_after(std::chrono::microseconds{life(draw)}, kill % 2 == 1, first);
    expect_whole(first, last);
    if (HasFailure()) return;
    reported += last - first + 1;
    first = last + 2;
  }
  EXPECT_GE(reported, kKillsEach / 2);
}

INSTANTIATE_TEST_SUITE_P(Seed, ArchiveKilled, ::testing::Values(1u, 2u, 3u, 4u));

}  // namespace
}  // namespace floatwright::testing
