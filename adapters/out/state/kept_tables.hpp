#pragma once
// Fishing tables in the cache directory, tables/FINGERPRINT.tables, a file an order. A file that is not as it was
// written counts as none and is written anew. Written whole, so that two runs at once do not meet; the oldest used go
// when there are too many bytes of them.
#include <functional>

#include "adapters/out/files/whole_file.hpp"
#include "engine/sinking/fishing_tables.hpp"

namespace floatwright {

struct TableShelf {
  std::filesystem::path cache;                       // cache_directory()
  std::uintmax_t most_bytes = 200ull * 1000 * 1000;  // judgement: some ten boxes of tackle
};

// None where it is not kept, or not as written.
[[nodiscard]] std::optional<TableSet> kept_tables(const TableShelf& shelf, const TableOrder& order);
[[nodiscard]] Result<Written> keep_tables(const TableShelf& shelf, const TableOrder& order, const TableSet& tables);
// Until what is left is within bounds; also what a run that was killed left behind.
void throw_away_oldest(const TableShelf& shelf);

// All tables that are needed, in the order of `needed.orders`: kept ones, and the others worked out and kept.
struct TablesMade {
  std::vector<TableSet> sets;
  std::optional<Failure> not_kept;  // why what was worked out could not be kept, the first time
};
struct TableMaker {
  const Tackle& tackle;
  const DriftLimits& limits;
  std::function<void(std::size_t, const std::function<void(std::size_t)>&)>
      do_each;                                                 // calls work(i), side by side or not
  std::function<void(std::size_t done, std::size_t of)> told;  // of those worked out; one at a time
};
// By order, what is kept, and then with what is not worked out. No shelf: none is kept.
using KeptSets = std::vector<std::optional<TableSet>>;
[[nodiscard]] KeptSets kept_sets(
    const std::optional<TableShelf>& shelf, const TablesNeeded& needed,
    const std::function<void(std::size_t, const std::function<void(std::size_t)>&)>& do_each);
[[nodiscard]] TablesMade with_others_made(KeptSets kept, const std::optional<TableShelf>& shelf,
                                          const TablesNeeded& needed, const TableMaker& maker);
// Both. No shelf: all are worked out and none is kept.
[[nodiscard]] TablesMade kept_or_made(const std::optional<TableShelf>& shelf, const TablesNeeded& needed,
                                      const TableMaker& maker);

}  // namespace floatwright
