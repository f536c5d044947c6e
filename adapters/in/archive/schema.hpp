#pragma once
// The archive's tables, version by version. A change is a new migration at the end of the list; none is ever edited,
// since files in the field were made by them.
#include <filesystem>
#include <optional>

#include "adapters/result.hpp"

namespace SQLite {
class Database;
}

namespace floatwright {

// Number that tells an archive from other programs' databases (PRAGMA application_id): "fwra" in ASCII.
inline constexpr int kArchiveApplication = 0x66777261;

[[nodiscard]] int newest_archive_version();
[[nodiscard]] int archive_version(SQLite::Database& database);

// Another program's database, or one of a newer version; none: ours, or still empty. Reads only.
[[nodiscard]] std::optional<Failure> why_not_readable(SQLite::Database& database, const std::filesystem::path& file);

// Brings the file to the newest version, whole or not at all; two processes may do it at once.
void migrate(SQLite::Database& database);

}  // namespace floatwright
