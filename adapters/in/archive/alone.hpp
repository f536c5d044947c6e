#pragma once
// Inside the archive: opening a file to read it where nothing can be made beside it.
#include <filesystem>
#include <memory>

namespace SQLite {
class Database;
}

namespace floatwright {

// A write-ahead log needs an index beside it, which can't be made where nothing can be written. Nobody may be writing:
// without a log the file alone is all there is; with one it is read with an index in memory. Nothing is read yet.
[[nodiscard]] std::unique_ptr<SQLite::Database> opened_alone(const std::filesystem::path& file);

}  // namespace floatwright
