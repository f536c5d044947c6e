#include "adapters/in/archive/connection.hpp"

#include <SQLiteCpp/SQLiteCpp.h>
#include <fmt/format.h>
#include <sqlite3.h>

#include <thread>

#include "adapters/in/archive/put_aside.hpp"
#include "adapters/in/archive/rescue.hpp"
#include "adapters/in/archive/schema.hpp"

namespace floatwright {
namespace {

namespace fs = std::filesystem;
using Database = std::unique_ptr<SQLite::Database>;

constexpr std::chrono::milliseconds kLookAgain{10};

// The switch to a write-ahead log gives up at once where another process is just making the same file.
void begin_log(SQLite::Database& database, std::chrono::milliseconds longest_wait) {
  const auto until = std::chrono::steady_clock::now() + longest_wait;
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

Result<Database> connected_to_write(const fs::path& file, std::chrono::milliseconds longest_wait) {
  auto database = std::make_unique<SQLite::Database>(file, SQLite::OPEN_READWRITE | SQLite::OPEN_CREATE,
                                                     static_cast<int>(longest_wait.count()));
  // SQLite opens what may not be written all the same, to read it.
  if (sqlite3_db_readonly(database->getHandle(), "main") == 1)
    throw SQLite::Exception("it may only be read", SQLITE_READONLY);
  if (auto failure = why_not_readable(*database, file)) return tl::unexpected(*failure);
  begin_log(*database, longest_wait);
  database->exec("PRAGMA synchronous = FULL");
  migrate(*database);
  return database;
}

struct Mend {
  int exit_code;
  const char* what_to_do;
};

Mend mend_of(int code) {
  switch (code) {
    case SQLITE_CORRUPT:
    case SQLITE_NOTADB:
      return {kExitBadData,
              "The file is damaged. `floatwright fetch` renames it, deletes nothing and begins a new one."};
    case SQLITE_BUSY:
    case SQLITE_LOCKED:
      return {kExitTryLater, "Another run is writing in it and did not end while this one waited; try again later."};
    case SQLITE_FULL:
      return {kExitWriteFailed, "The disk is full; what was there before is untouched. Make room and try again."};
    case SQLITE_READONLY:
    case SQLITE_PERM:
    case SQLITE_CANTOPEN:
      return {kExitCantCreate, "See that the folder is there and that it and the file may be written."};
    default:
      return {kExitWriteFailed, "See whether the disk is sound and has room; what was there before is untouched."};
  }
}

// Reads after "a new one is begun".
std::string rescued_from(const fs::path& aside, SQLite::Database& anew) {
  try {
    return fmt::format("with the {} readings that could still be read out of it", rescue_readings(aside, anew));
  } catch (const SQLite::Exception& error) {
    return fmt::format("without its readings, which could not be copied: {}", error.what());
  }
}

}  // namespace

Failure archive_failure(const std::filesystem::path& file, const char* doing, const SQLite::Exception& error) {
  const Mend mend = mend_of(error.getErrorCode());
  return {fmt::format("{}: cannot {}: {}. {}", file.string(), doing, error.what(), mend.what_to_do), mend.exit_code};
}

bool is_damage(const SQLite::Exception& error) {
  return error.getErrorCode() == SQLITE_CORRUPT || error.getErrorCode() == SQLITE_NOTADB;
}

bool is_busy(const SQLite::Exception& error) {
  return error.getErrorCode() == SQLITE_BUSY || error.getErrorCode() == SQLITE_LOCKED;
}

SQLite::Database& Archive::Connection::opened() const {
  if (!database) throw SQLite::Exception("it was damaged and is closed", SQLITE_CORRUPT);
  return *database;
}

Result<void> Archive::Connection::connect() {
  auto connected = connected_to_write(file, longest_wait);
  if (!connected) return tl::unexpected(connected.error());
  database = std::move(*connected);
  return {};
}

Result<void> Archive::Connection::open() {
  try {
    return connect();
  } catch (const SQLite::Exception& error) {
    if (!is_damage(error)) return tl::unexpected(archive_failure(file, "open the archive to write", error));
  }
  return begin_anew();
}

Result<void> Archive::Connection::begin_anew() {
  database.reset();
  const auto aside = put_aside_if_damaged(file, now);
  if (!aside) return tl::unexpected(aside.error());
  try {
    const auto connected = connect();
    if (connected && *aside)
      notes.push_back(
          fmt::format("{}: the archive was damaged. It is kept as {}, nothing was deleted, and a new one is begun "
                      "{}; what the services still have comes back with `floatwright fetch --since P5Y`.",
                      file.string(), (*aside)->filename().string(), rescued_from(**aside, *database)));
    return connected;
  } catch (const SQLite::Exception& error) {
    return tl::unexpected(archive_failure(file, "begin a new archive", error));
  }
}

}  // namespace floatwright
