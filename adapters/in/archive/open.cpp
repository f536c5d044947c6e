#include <SQLiteCpp/SQLiteCpp.h>
#include <fmt/format.h>
#include <sqlite3.h>

#include <chrono>
#include <system_error>
#include <thread>

#include "adapters/in/archive/connection.hpp"
#include "adapters/in/archive/put_aside.hpp"
#include "adapters/in/archive/schema.hpp"

namespace floatwright {
namespace {

namespace fs = std::filesystem;
using Database = std::unique_ptr<SQLite::Database>;

constexpr std::chrono::milliseconds kLongestWait = std::chrono::seconds{30};  // for another process that writes
constexpr std::chrono::milliseconds kLookAgain{10};

// The switch to a write-ahead log gives up at once where another process is just making the same file.
void begin_log(SQLite::Database& database) {
  const auto until = std::chrono::steady_clock::now() + kLongestWait;
  for (;;) {
    try {
      database.exec("PRAGMA journal_mode = WAL");
      return;
    } catch (const SQLite::Exception& error) {
      if (!is_busy(error) || std::chrono::steady_clock::now() > until) throw;
      std::this_thread::sleep_for(kLookAgain);
    }
  }
}

Result<Database> connected_to_write(const fs::path& file) {
  auto database = std::make_unique<SQLite::Database>(file, SQLite::OPEN_READWRITE | SQLite::OPEN_CREATE,
                                                     static_cast<int>(kLongestWait.count()));
  if (auto failure = why_not_readable(*database, file)) return tl::unexpected(*failure);
  begin_log(*database);
  database->exec("PRAGMA synchronous = FULL");
  migrate(*database);
  return database;
}

// As the address of a file in SQLite's own form.
std::string address_of(const fs::path& file, const char* options) {
  std::string out = "file:";
  for (const char c : fs::absolute(file).string())
    out += c == '%' || c == '?' || c == '#' ? fmt::format("%{:02x}", static_cast<unsigned char>(c)) : std::string(1, c);
  return out + options;
}

// Opened is not yet read: what can't be had shows with the first statement.
Database readable(const std::string& address, bool alone) {
  auto database = std::make_unique<SQLite::Database>(address, SQLite::OPEN_READONLY | SQLite::OPEN_URI,
                                                     static_cast<int>(kLongestWait.count()));
  if (alone) database->exec("PRAGMA locking_mode = EXCLUSIVE");
  (void)archive_version(*database);
  return database;
}

// A write-ahead log needs an index beside it, which can't be made in a folder that can't be written. Where there is no
// index nobody writes: without a log the file alone is all there is; with one it is read with an index in memory.
Database connected_to_read(const fs::path& file) {
  try {
    return readable(address_of(file, ""), false);
  } catch (const SQLite::Exception& error) {
    const bool no_index = error.getErrorCode() == SQLITE_CANTOPEN || error.getErrorCode() == SQLITE_READONLY;
    if (!no_index || fs::exists(file.string() + "-shm")) throw;
  }
  const fs::path log = file.string() + "-wal";
  std::error_code error;
  if (fs::exists(log) && fs::file_size(log, error) > 0) return readable(address_of(file, "?vfs=unix-none"), true);
  return readable(address_of(file, "?immutable=1"), false);
}

Failure no_archive(const fs::path& file) {
  return {fmt::format("{}: there is no archive of readings yet. `floatwright fetch` makes it.", file.string()),
          kExitNoInput};
}

}  // namespace

Archive::Archive(std::unique_ptr<Connection> connection) : connection_(std::move(connection)) {}
Archive::Archive(Archive&&) noexcept = default;
Archive& Archive::operator=(Archive&&) noexcept = default;
Archive::~Archive() = default;

const std::vector<std::string>& Archive::notes() const { return connection_->notes; }

Result<void> Archive::Connection::connect() {
  auto connected = connected_to_write(file);
  if (!connected) return tl::unexpected(connected.error());
  database = std::move(*connected);
  return {};
}

Result<void> Archive::Connection::open() {
  try {
    return connect();
  } catch (const SQLite::Exception& error) {
    if (!is_damage(error)) return tl::unexpected(archive_failure(file, "open the archive", error));
  }
  return begin_anew();
}

Result<void> Archive::Connection::begin_anew() {
  database.reset();
  const auto aside = put_aside_if_damaged(file, now);
  if (!aside) return tl::unexpected(aside.error());
  if (*aside) notes.push_back(**aside);
  try {
    return connect();
  } catch (const SQLite::Exception& error) {
    return tl::unexpected(archive_failure(file, "open the archive", error));
  }
}

Result<Archive> Archive::open_to_write(const fs::path& file, Instant now) {
  std::error_code error;
  if (file.has_parent_path()) fs::create_directories(file.parent_path(), error);
  if (error)
    return tl::unexpected(Failure{fmt::format("{}: cannot make the folder of the archive: {}. See that the folder above "
                                              "may be written, or name another place as \"archive\" in settings.json.",
                                              file.parent_path().string(), error.message()),
                                  kExitCantCreate});
  auto connection = std::make_unique<Connection>(Connection{.file = file, .database = nullptr, .now = now});
  if (const auto opened = connection->open(); !opened) return tl::unexpected(opened.error());
  return Archive(std::move(connection));
}

Result<Archive> Archive::open_to_read(const fs::path& file) {
  std::error_code error;
  if (!fs::exists(file, error)) return tl::unexpected(no_archive(file));
  try {
    Database database = connected_to_read(file);
    if (auto failure = why_not_readable(*database, file)) return tl::unexpected(*failure);
    if (archive_version(*database) == 0) return tl::unexpected(no_archive(file));
    return Archive(std::make_unique<Connection>(Connection{.file = file, .database = std::move(database)}));
  } catch (const SQLite::Exception& failed) {
    return tl::unexpected(archive_failure(file, "read the archive", failed));
  }
}

}  // namespace floatwright
