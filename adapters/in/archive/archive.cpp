#include "adapters/in/archive/archive.hpp"

#include <SQLiteCpp/SQLiteCpp.h>
#include <fmt/format.h>
#include <sqlite3.h>

#include <system_error>

#include "adapters/in/archive/alone.hpp"
#include "adapters/in/archive/connection.hpp"
#include "adapters/in/archive/schema.hpp"

namespace floatwright {
namespace {

namespace fs = std::filesystem;
using Database = std::unique_ptr<SQLite::Database>;

constexpr std::uintmax_t kLeastIndex = 32768;  // bytes; made in pieces of 32 kB (SQLite's own test/walro2.test)
constexpr int kReadersWaitMs = 30000;          // only while another process mends the log of a run that was killed

// Opened is not yet read: what can't be had shows with the first statement.
Database connected_to_read(const fs::path& file) {
  try {
    auto database = std::make_unique<SQLite::Database>(file, SQLite::OPEN_READONLY, kReadersWaitMs);
    (void)archive_version(*database);
    return database;
  } catch (const SQLite::Exception& error) {
    std::error_code none;
    const auto index = fs::file_size(file.string() + "-shm", none);
    const bool may_be_written = !none && index >= kLeastIndex;
    if (is_damage(error) || is_busy(error) || may_be_written) throw;
  }
  auto database = opened_alone(file);
  (void)archive_version(*database);
  return database;
}

Failure no_archive(const fs::path& file) {
  return {fmt::format("{}: there is no archive of readings yet. `floatwright fetch` makes it.", file.string()),
          kExitNoInput};
}

Failure not_readable(const fs::path& file, const SQLite::Exception& error) {
  if (error.getErrorCode() != SQLITE_CANTOPEN) return archive_failure(file, "read the archive", error);
  return {fmt::format("{}: cannot open the archive. See that you may read it and its folder.", file.string()),
          kExitNoInput};
}

}  // namespace

Archive::Archive(std::unique_ptr<Connection> connection) : connection_(std::move(connection)) {}
Archive::Archive(Archive&&) noexcept = default;
Archive& Archive::operator=(Archive&&) noexcept = default;
Archive::~Archive() = default;

const std::vector<std::string>& Archive::notes() const { return connection_->notes; }

Result<Archive> Archive::open_to_write(const fs::path& file, Instant now, std::chrono::milliseconds longest_wait) {
  std::error_code error;
  if (file.has_parent_path()) fs::create_directories(file.parent_path(), error);
  if (error)
    return tl::unexpected(
        Failure{fmt::format("{}: cannot make the folder of the archive: {}. See that the folder above "
                            "may be written, or name another place as \"archive\" in settings.json.",
                            file.parent_path().string(), error.message()),
                kExitCantCreate});
  auto connection = std::make_unique<Connection>();
  connection->file = file;
  connection->now = now;
  connection->longest_wait = longest_wait;
  if (const auto opened = connection->open(); !opened) return tl::unexpected(opened.error());
  return Archive(std::move(connection));
}

Result<Archive> Archive::open_to_read(const fs::path& file) {
  std::error_code error;
  if (!fs::exists(file, error) && !error) return tl::unexpected(no_archive(file));
  try {
    Database database = connected_to_read(file);
    if (auto failure = why_not_readable(*database, file)) return tl::unexpected(*failure);
    if (archive_version(*database) == 0) return tl::unexpected(no_archive(file));
    auto connection = std::make_unique<Connection>();
    connection->file = file;
    connection->database = std::move(database);
    return Archive(std::move(connection));
  } catch (const SQLite::Exception& failed) {
    return tl::unexpected(not_readable(file, failed));
  }
}

}  // namespace floatwright
