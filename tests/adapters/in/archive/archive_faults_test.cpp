// What can befall an archive's file: a disk that can't be written or is full, damage, other versions.
#include <SQLiteCpp/SQLiteCpp.h>
#include <signal.h>
#include <sys/resource.h>

#include <fstream>

#include "tests/adapters/in/archive/archive_file.hpp"
#include "tests/adapters/in/archive/own_process.hpp"

namespace floatwright::testing {
namespace {

namespace fs = std::filesystem;
using ::testing::AllOf;
using ::testing::Contains;
using ::testing::ContainsRegex;
using ::testing::ElementsAre;
using ::testing::HasSubstr;
using ::testing::IsEmpty;
using ::testing::SizeIs;

constexpr int kUnmountable = 77;

class ArchiveFaults : public ArchiveFile {
 protected:
  // As after a sudden end: rows in the write-ahead log, and its index beside it.
  void fill_and_die(int rows) const {
    ASSERT_EQ(in_process([&] {
                Archive archive = writing();
                return archive.store({flow_of(quarter_hours(rows))}, at(100)) ? ::_exit(0), 0 : 1;
              }),
              0);
  }
  [[nodiscard]] std::vector<fs::path> put_aside() const {
    std::vector<fs::path> out;
    for (const auto& entry : fs::directory_iterator(folder_.path()))
      if (entry.path().filename().string().find(".damaged-") != std::string::npos) out.push_back(entry.path());
    return out;
  }
};

// --- a disk that can't be written

class ArchiveReadOnly : public ArchiveFaults, public ::testing::WithParamInterface<const char*> {
 protected:
  // How the files lie when they are read.
  void lay() {
    const std::string how = GetParam();
    if (how == "ClosedWell")
      fill(500);
    else
      fill_and_die(500);
    if (how == "LogWithoutIndex") fs::remove(file_.string() + "-shm");
    ASSERT_EQ(fs::exists(file_.string() + "-wal"), how != "ClosedWell");
    fs::permissions(folder_.path(), fs::perms{0555});
  }
  [[nodiscard]] int reads_all() const {
    const auto archive = Archive::open_to_read(file_);
    if (!archive) return std::cerr << archive.error().what << std::endl, 1;
    if (rows_in(*archive) != 500) return std::cerr << rows_in(*archive) << " rows" << std::endl, 2;
    const auto refused = Archive::open_to_write(file_, at(0));
    if (refused) return std::cerr << "opened to write" << std::endl, 3;
    std::cerr << refused.error().what << std::endl;
    return refused.error().exit_code == kExitCantCreate ? 0 : 4;
  }
  ~ArchiveReadOnly() override { fs::permissions(folder_.path(), fs::perms{0700}); }
};

TEST_P(ArchiveReadOnly, IsReadInAFolderWithoutTheRightToWrite) {
  lay();
  EXPECT_EQ(in_process([&] { return without_root() ? reads_all() : kUnmountable; }), 0);
}

TEST_P(ArchiveReadOnly, IsReadOnADiskMountedReadOnly) {
  lay();
  const int code = in_process([&] { return mounted_read_only(folder_.path()) ? reads_all() : kUnmountable; });
  if (code == kUnmountable)
    GTEST_SKIP() << "mounting a folder read-only needs root; the folder without rights stands for it";
  EXPECT_EQ(code, 0);
}

INSTANTIATE_TEST_SUITE_P(As, ArchiveReadOnly, ::testing::Values("ClosedWell", "Killed", "LogWithoutIndex"),
                         [](const auto& one) { return std::string{one.param}; });

TEST_F(ArchiveFaults, ThatMayNotBeReadSaySo) {
  fill(10);
  fs::permissions(folder_.path(), fs::perms{0755});
  fs::permissions(file_, fs::perms{0});
  const auto refused = [&](const fs::path& file) {
    if (!without_root()) return kUnmountable;
    const auto archive = Archive::open_to_read(file);
    return archive || archive.error().what.find("you may read it") == std::string::npos ? 1 : archive.error().exit_code;
  };
  EXPECT_EQ(in_process([&] { return refused(file_); }), kExitNoInput);
  fs::permissions(folder_.path(), fs::perms{0});
  EXPECT_EQ(in_process([&] { return refused(file_); }), kExitNoInput);
  fs::permissions(folder_.path(), fs::perms{0700});
}

TEST_F(ArchiveFaults, OnADiskWithoutAByteOfRoomAreStillRead) {
  const int code = in_process([&] {
    if (!mounted_small(folder_.path(), "size=1m")) return kUnmountable;
    if (!writing().store({flow_of(quarter_hours(500))}, at(100))) return 1;
    std::ofstream filler(folder_.path() / "filler");
    while (filler.put('x').flush()) continue;
    return rows_in(Archive::open_to_read(file_).value()) == 500 ? 0 : 2;
  });
  if (code == kUnmountable) GTEST_SKIP() << "mounting a small tmpfs needs root";
  EXPECT_EQ(code, 0);
}

// --- damage and other versions

void spoil(const fs::path& file, std::streamoff from, std::streamoff to) {
  std::fstream out(file, std::ios::in | std::ios::out | std::ios::binary);
  out.seekp(from);
  for (std::streamoff i = from; i < to; ++i) out.put('#');
}

TEST_F(ArchiveFaults, CutShortIsKeptAsideAndANewOneBegunWithWhatCanBeReadOfIt) {
  fill(5000);
  ASSERT_TRUE(writing().note_asked({kStation, "usgs-water-data", at(0), at(75000), at(75000)}));
  const auto whole = fs::file_size(file_);
  fs::resize_file(file_, whole / 2);

  const auto refused = Archive::open_to_read(file_);
  ASSERT_FALSE(refused);
  EXPECT_EQ(refused.error().exit_code, kExitBadData);
  EXPECT_THAT(refused.error().what,
              AllOf(HasSubstr(file_.string()), HasSubstr("damaged"), HasSubstr("floatwright fetch")));
  EXPECT_EQ(fs::file_size(file_), whole / 2);

  Archive anew = writing();
  ASSERT_THAT(put_aside(), SizeIs(1));
  EXPECT_EQ(put_aside()[0].filename(), "readings.sqlite3.damaged-20270513T000000Z");
  EXPECT_EQ(fs::file_size(put_aside()[0]), whole / 2);
  EXPECT_THAT(anew.notes(), ElementsAre(AllOf(HasSubstr("readings.sqlite3.damaged-20270513T000000Z"),
                                              HasSubstr("nothing was deleted"), HasSubstr("fetch --since"))));
  const auto rescued = anew.series_of(kStation, at(0), Instant::max()).value();
  ASSERT_THAT(rescued, SizeIs(1));
  EXPECT_GT(rescued[0].readings.size(), 1000u);
  EXPECT_LT(rescued[0].readings.size(), 5000u);
  for (const Reading& row : rescued[0].readings) {
    EXPECT_EQ(row.si, 40.0);
    EXPECT_EQ(row.marks, Marks{Mark::Provisional});
  }
  EXPECT_THAT(anew.asked(kStation).value(), IsEmpty()) << "all is asked again, so that what is gone comes back";
  EXPECT_THAT(anew.integrity().value(), IsEmpty());
  EXPECT_EQ(anew.store({flow_of(quarter_hours(5000))}, at(100))->added, 5000 - rescued[0].readings.size());
}

TEST_F(ArchiveFaults, OfGarbageAreKeptAsideEachUnderItsOwnName) {
  for (int i = 0; i < 2; ++i) {
    folder_.put("readings.sqlite3", std::string(10000, 'x'));
    EXPECT_THAT(writing().notes(), SizeIs(1));
  }
  EXPECT_THAT(put_aside(), SizeIs(2));
  EXPECT_THAT(writing().notes(), IsEmpty());
}

TEST_F(ArchiveFaults, MetWhileStoringCostNothingOfWhatIsStored) {
  fill(5000);
  const auto middle = std::streamoff(fs::file_size(file_)) / 2 / 4096 * 4096;
  spoil(file_, middle, middle + 4096);  // one page: it still opens
  Archive archive = writing();
  EXPECT_THAT(archive.notes(), IsEmpty());
  EXPECT_FALSE(archive.series_of(kStation, Instant::min(), Instant::max()));
  EXPECT_THAT(archive.integrity().value(), Contains(AllOf(HasSubstr("damaged"), HasSubstr("floatwright fetch"))));
  ASSERT_TRUE(archive.store({flow_of(quarter_hours(6000))}, at(100)));
  EXPECT_THAT(archive.notes(), SizeIs(1));
  EXPECT_THAT(put_aside(), SizeIs(1));
  EXPECT_THAT(archive.notes()[0], ContainsRegex("with the 4[5-9][0-9][0-9] readings")) << "from both ends up to it";
  EXPECT_EQ(rows_in(archive), 6000u);
  EXPECT_THAT(archive.integrity().value(), IsEmpty());
}

TEST_F(ArchiveFaults, MetWhileAnotherRunReadsTakeTheLogAsideWithTheFile) {
  fill(5000);
  Archive writer = writing();
  ASSERT_TRUE(writer.store({flow_of(quarter_hours(10, 50.0))}, at(100)));
  const Archive reader = Archive::open_to_read(file_).value();
  spoil(file_, 40960, std::streamoff(fs::file_size(file_)));
  ASSERT_TRUE(writer.store({flow_of(quarter_hours(6000))}, at(100)));
  EXPECT_THAT(put_aside(), SizeIs(2));
  EXPECT_EQ(rows_in(writer), 6000u);
}

TEST_F(ArchiveFaults, ThatCannotBePutAsideAreToldAndNothingCrashes) {
  fs::permissions(folder_.path(), fs::perms{0777});
  const int code = in_process([&] {
    if (!without_root()) return kUnmountable;
    const fs::path own = folder_.path() / "own", file = own / "readings.sqlite3";
    if (!Archive::open_to_write(file, at(0)).value().store({flow_of(quarter_hours(5000))}, at(100))) return 1;
    Archive archive = Archive::open_to_write(file, at(0)).value();
    spoil(file, 40960, std::streamoff(fs::file_size(file)));
    fs::permissions(own, fs::perms{0555});
    for (int i = 0; i < 2; ++i) {
      const auto refused = archive.store({flow_of(quarter_hours(6000))}, at(100));
      if (refused) return 2;
      if (i == 0) std::cerr << refused.error().what << std::endl;
      if (refused.error().exit_code != kExitCantCreate) return 3;
      if (archive.series_of(kStation, at(0), at(1)) || archive.validator("x")) return 4;
    }
    fs::permissions(own, fs::perms{0755});
    return archive.store({flow_of(quarter_hours(6000))}, at(100)) && archive.notes().size() == 1 ? 0 : 5;
  });
  EXPECT_EQ(code, 0);
}

TEST_F(ArchiveFaults, OfANewerVersionAreRefusedAndNotTouched) {
  fill(10);
  SQLite::Database{file_, SQLite::OPEN_READWRITE}.exec("PRAGMA user_version = 99");
  const std::string before = folder_.get("readings.sqlite3");
  const auto written = Archive::open_to_write(file_, at(0));
  const auto read = Archive::open_to_read(file_);
  for (const auto* refused : {&written, &read}) {
    ASSERT_FALSE(*refused);
    EXPECT_EQ(refused->error().exit_code, kExitBadData);
    EXPECT_THAT(refused->error().what, AllOf(HasSubstr("newer floatwright"), HasSubstr("archive version 99")));
  }
  EXPECT_EQ(folder_.get("readings.sqlite3"), before);
  EXPECT_THAT(put_aside(), IsEmpty());
}

TEST_F(ArchiveFaults, OfAnotherProgramAreRefusedAndNotTouched) {
  SQLite::Database{file_, SQLite::OPEN_READWRITE | SQLite::OPEN_CREATE}.exec("CREATE TABLE recipes (name)");
  const std::string before = folder_.get("readings.sqlite3");
  const auto written = Archive::open_to_write(file_, at(0));
  ASSERT_FALSE(written);
  EXPECT_EQ(written.error().exit_code, kExitBadData);
  EXPECT_THAT(written.error().what, HasSubstr("another program"));
  EXPECT_FALSE(Archive::open_to_read(file_));
  EXPECT_EQ(folder_.get("readings.sqlite3"), before);
}

TEST_F(ArchiveFaults, MissingOrEmptySayWhatMakesThem) {
  for (int i = 0; i < 2; ++i) {
    const auto read = Archive::open_to_read(file_);
    ASSERT_FALSE(read);
    EXPECT_EQ(read.error().exit_code, kExitNoInput);
    EXPECT_THAT(read.error().what, HasSubstr("`floatwright fetch`"));
    folder_.put("readings.sqlite3", "");
  }
  fill(10);
  EXPECT_EQ(rows_in(Archive::open_to_read(file_).value()), 10u);
}

TEST_F(ArchiveFaults, InAPlaceWhereNoFolderCanBeMadeSayWhich) {
  folder_.put("file", "");
  const auto written = Archive::open_to_write(folder_.path() / "file" / "archive" / "readings.sqlite3", at(0));
  ASSERT_FALSE(written);
  EXPECT_EQ(written.error().exit_code, kExitCantCreate);
  EXPECT_THAT(written.error().what, HasSubstr((folder_.path() / "file" / "archive").string()));
}

TEST_F(ArchiveFaults, InRowsShowInTheCheck) {
  fill(3);
  EXPECT_THAT(writing().integrity().value(), IsEmpty());
  SQLite::Database database{file_, SQLite::OPEN_READWRITE};
  database.exec("UPDATE readings SET marks = 4096 WHERE instant = (SELECT min(instant) FROM readings)");
  database.exec("INSERT INTO readings VALUES (99, 0, 9e999, 0, 0)");
  database.exec("INSERT INTO series SELECT 7, station, series_id, 'smell', 0, NULL, '', '', '' FROM series");
  const auto told = writing().integrity().value();
  EXPECT_THAT(told,
              ElementsAre(HasSubstr("readings that belong to no series: 1"), HasSubstr("readings with marks"),
                          HasSubstr("readings that are no finite numbers: 1"), HasSubstr("series of a quantity")));
  EXPECT_EQ(writing().series_of(kStation, at(0), at(0)).value()[0].readings[0].marks, Marks{Mark::Unknown});
}

// --- a full disk

// Without root no small disk can be mounted; a limit on the length of files is the same to a program that writes.
int fills_up(const fs::path& file, const std::function<bool(bool)>& small) {
  Archive archive = Archive::open_to_write(file, at(0)).value();
  if (!archive.store({flow_of(quarter_hours(100))}, at(100))) return 1;
  if (!small(true)) return kUnmountable;
  const auto refused = archive.store({flow_of(quarter_hours(50000, 50.0))}, at(200));
  if (refused) return 2;
  std::cerr << refused.error().what << std::endl;
  if (refused.error().exit_code != kExitWriteFailed) return 3;
  if (rows_in(archive) != 100 || rows_in(Archive::open_to_read(file).value()) != 100) return 4;
  if (!small(false)) return kUnmountable;
  const auto stored = archive.store({flow_of(quarter_hours(50000, 50.0))}, at(200));
  if (!stored || stored->added != 49900 || stored->changed != 100) return 5;
  return archive.integrity().value().empty() ? 0 : 6;
}

TEST_F(ArchiveFaults, OnAFullDiskKeepWhatWasThereAndGoOnWhenThereIsRoom) {
  const int code = in_process([&] {
    if (!mounted_small(folder_.path(), "size=256k")) return kUnmountable;
    return fills_up(file_, [&](bool small) { return small || remounted_small(folder_.path(), "size=64m"); });
  });
  if (code == kUnmountable) GTEST_SKIP() << "mounting a small tmpfs needs root; the limit on files stands for it";
  EXPECT_EQ(code, 0);
}

TEST_F(ArchiveFaults, ThatCannotGrowKeepWhatWasThereAndGoOnWhenTheyCan) {
  EXPECT_EQ(in_process([&] {
              ::signal(SIGXFSZ, SIG_IGN);
              rlimit before{};
              ::getrlimit(RLIMIT_FSIZE, &before);
              const rlimit short_files{256 * 1024, before.rlim_max};
              return fills_up(
                  file_, [&](bool small) { return ::setrlimit(RLIMIT_FSIZE, small ? &short_files : &before) == 0; });
            }),
            0);
}

}  // namespace
}  // namespace floatwright::testing
