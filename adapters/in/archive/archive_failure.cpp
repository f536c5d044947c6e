#include <SQLiteCpp/SQLiteCpp.h>
#include <fmt/format.h>
#include <sqlite3.h>

#include "adapters/in/archive/connection.hpp"

namespace floatwright {
namespace {

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
      return {kExitTryLater, "Another run is writing in it and has not ended; try again later."};
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

}  // namespace floatwright
