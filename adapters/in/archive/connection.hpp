#pragma once
// Inside the archive: its open database, and SQLite's errors as sentences.
#include "adapters/in/archive/archive.hpp"

namespace SQLite {
class Database;
class Exception;
}  // namespace SQLite

namespace floatwright {

// `doing` reads after "cannot": "store readings".
[[nodiscard]] Failure archive_failure(const std::filesystem::path& file, const char* doing,
                                      const SQLite::Exception& error);
[[nodiscard]] bool is_damage(const SQLite::Exception& error);
[[nodiscard]] bool is_busy(const SQLite::Exception& error);

struct Archive::Connection {
  std::filesystem::path file;
  std::unique_ptr<SQLite::Database> database;
  Instant now{};  // of opening; names what is put aside
  std::chrono::milliseconds longest_wait{};
  std::vector<std::string> notes = {};

  // Throws as SQLite does where beginning anew has failed and nothing is open.
  [[nodiscard]] SQLite::Database& opened() const;
  [[nodiscard]] Result<void> open();        // to write
  [[nodiscard]] Result<void> begin_anew();  // after damage was met: puts the file aside if it is damaged, opens again

 private:
  [[nodiscard]] Result<void> connect();  // lets SQLite's exceptions out
};

}  // namespace floatwright
