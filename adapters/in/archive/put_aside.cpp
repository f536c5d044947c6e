#include "adapters/in/archive/put_aside.hpp"

#include <SQLiteCpp/SQLiteCpp.h>
#include <date/date.h>
#include <fcntl.h>
#include <fmt/format.h>
#include <sys/file.h>
#include <sys/stat.h>
#include <unistd.h>

#include <system_error>

#include "adapters/in/archive/connection.hpp"

namespace floatwright {
namespace {

namespace fs = std::filesystem;

// Held on the damaged file itself, so that of two processes one renames it and the other sees that it is gone.
class DamagedFile {
 public:
  explicit DamagedFile(const fs::path& file) : path_(file), number_(::open(file.c_str(), O_RDONLY | O_CLOEXEC)) {
    another_has_it_ = number_ >= 0 && ::flock(number_, LOCK_EX | LOCK_NB) != 0;
  }
  ~DamagedFile() {
    if (number_ >= 0) ::close(number_);
  }
  DamagedFile(const DamagedFile&) = delete;
  DamagedFile& operator=(const DamagedFile&) = delete;

  [[nodiscard]] bool another_has_it() const { return another_has_it_; }
  [[nodiscard]] bool is_still_there() const {
    struct stat held {
    }, named{};
    return number_ >= 0 && ::fstat(number_, &held) == 0 && ::stat(path_.c_str(), &named) == 0 &&
           held.st_ino == named.st_ino && held.st_dev == named.st_dev;
  }

 private:
  fs::path path_;
  int number_;
  bool another_has_it_ = false;
};

bool is_damaged(const fs::path& file) {
  try {
    SQLite::Database database(file, SQLite::OPEN_READONLY);
    return database.execAndGet("PRAGMA integrity_check(1)").getString() != "ok";
  } catch (const SQLite::Exception& error) {
    return is_damage(error);
  }
}

fs::path free_name(const fs::path& file, Instant now) {
  const auto at = date::floor<std::chrono::seconds>(now);
  const fs::path first = file.string() + ".damaged-" + date::format("%Y%m%dT%H%M%SZ", at);
  fs::path name = first;
  std::error_code error;
  for (int i = 2; fs::exists(fs::symlink_status(name, error)); ++i) name = fmt::format("{}-{}", first.string(), i);
  return name;
}

}  // namespace

Result<std::optional<fs::path>> put_aside_if_damaged(const fs::path& file, Instant now) {
  const DamagedFile held(file);
  if (held.another_has_it())
    return tl::unexpected(
        Failure{fmt::format("{}: the archive is damaged, and another run is just putting it aside. Try "
                            "again later.",
                            file.string()),
                kExitTryLater});
  if (!held.is_still_there() || !is_damaged(file)) return std::nullopt;
  const fs::path aside = free_name(file, now);
  std::error_code error;
  // The log first: a new file of the old name must never meet the old log. Readers leave an empty one.
  const fs::path log = file.string() + "-wal";
  std::error_code no_log;
  if (fs::file_size(log, no_log) > 0 && !no_log) fs::rename(log, aside.string() + "-wal", error);
  if (!error) fs::rename(file, aside, error);
  if (error)
    return tl::unexpected(
        Failure{fmt::format("{}: the archive is damaged and cannot be renamed to {}: {}. Move it away "
                            "by hand; the next run begins a new one.",
                            file.string(), aside.filename().string(), error.message()),
                kExitCantCreate});
  fs::remove(log, error);
  fs::remove(file.string() + "-shm", error);  // an index of the log, made anew by whoever opens it
  return aside;
}

}  // namespace floatwright
