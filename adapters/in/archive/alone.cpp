#include "adapters/in/archive/alone.hpp"

#include <SQLiteCpp/SQLiteCpp.h>
#include <fmt/format.h>

#include <system_error>

namespace floatwright {
namespace {

namespace fs = std::filesystem;

// A file as SQLite is told of it with options.
std::string address_of(const fs::path& file, const char* options) {
  std::string out = "file:";
  for (const char c : file.string())
    out += c == '%' || c == '?' || c == '#' ? fmt::format("%{:02x}", static_cast<unsigned char>(c)) : std::string(1, c);
  return out + options;
}

}  // namespace

std::unique_ptr<SQLite::Database> opened_alone(const fs::path& file) {
  std::error_code no_log;
  const bool has_log = fs::file_size(file.string() + "-wal", no_log) > 0 && !no_log;
  auto database = std::make_unique<SQLite::Database>(address_of(file, has_log ? "?vfs=unix-none" : "?immutable=1"),
                                                     SQLite::OPEN_READONLY | SQLite::OPEN_URI);
  database->exec("PRAGMA locking_mode = EXCLUSIVE");
  return database;
}

}  // namespace floatwright
