#pragma once
// Inside the archive: one batch of series on its way into the tables, within a transaction of the caller's.
#include <cstdint>
#include <utility>
#include <vector>

#include "adapters/in/archive/archive.hpp"

namespace SQLite {
class Database;
}

namespace floatwright {

// Sorts the batch by series and instant, since rows then follow each other on the disk as they do in the table (ten
// times faster than at random). Of each series the rows held between its first and last new one are read at once and
// walked beside the new ones, so a row that is held already costs no write.
[[nodiscard]] Stored store_batch(SQLite::Database& database, const std::vector<GaugeSeries>& series,
                                 Instant fetched_at);

}  // namespace floatwright
