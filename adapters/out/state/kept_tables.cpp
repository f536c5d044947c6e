#include "adapters/out/state/kept_tables.hpp"

#include <algorithm>
#include <chrono>
#include <fstream>
#include <mutex>
#include <string>

#include "adapters/out/state/table_file.hpp"

namespace floatwright {
namespace {

namespace fs = std::filesystem;

constexpr std::chrono::hours kUsedLately{24};  // a file's time of use is not written oftener
constexpr std::chrono::hours kLeftBehind{24};  // a temporary name that old belongs to no run

fs::path folder_of(const TableShelf& shelf) { return shelf.cache / "tables"; }
fs::path file_of(const TableShelf& shelf, const TableOrder& order) { return folder_of(shelf) / table_file_name(order); }

// The time of writing is kept as the time of last use. On a disk that can't be written it stays as it is.
void mark_used(const fs::path& path) {
  std::error_code error;
  const auto now = fs::file_time_type::clock::now();
  const auto used = fs::last_write_time(path, error);
  if (!error && now - used > kUsedLately) fs::last_write_time(path, now, error);
}

struct KeptFile {
  fs::path path;
  fs::file_time_type used;
  std::uintmax_t bytes = 0;
};

bool is_left_behind(const KeptFile& file) {
  return file.path.filename().string().starts_with(".") && fs::file_time_type::clock::now() - file.used > kLeftBehind;
}

// Another run may take a file away meanwhile: it is passed over.
std::vector<KeptFile> kept_files(const TableShelf& shelf) {
  std::vector<KeptFile> files;
  std::error_code error;
  for (fs::directory_iterator at{folder_of(shelf), error}, end; !error && at != end; at.increment(error)) {
    std::error_code gone;
    KeptFile file{at->path(), at->last_write_time(gone), 0};
    if (!gone) file.bytes = at->file_size(gone);
    if (!gone) files.push_back(std::move(file));
  }
  return files;
}

// Works the missing ones out and keeps each as soon as it is there.
class Making {
 public:
  Making(const std::optional<TableShelf>& shelf, const TablesNeeded& needed, const TableMaker& maker)
      : shelf_(shelf), needed_(needed), maker_(maker) {}
  void make(std::size_t order, std::size_t of, TablesMade& made) {
    made.sets[order] = fishing_tables(maker_.tackle, needed_.orders[order], maker_.limits);
    const std::optional<Failure> failed = kept(order, made);
    const std::scoped_lock alone(telling_);
    if (failed && !made.not_kept) made.not_kept = failed;
    maker_.told(++done_, of);
  }

 private:
  std::optional<Failure> kept(std::size_t order, TablesMade& made) {
    {
      const std::scoped_lock alone(telling_);
      if (!shelf_ || made.not_kept) return std::nullopt;  // what failed once fails again
    }
    const std::scoped_lock one_writer(writing_);  // a file's mode is asked of the whole process (umask)
    const auto written = keep_tables(*shelf_, needed_.orders[order], made.sets[order]);
    return written ? std::nullopt : std::optional(written.error());
  }
  const std::optional<TableShelf>& shelf_;
  const TablesNeeded& needed_;
  const TableMaker& maker_;
  std::mutex telling_, writing_;
  std::size_t done_ = 0;
};

}  // namespace

std::optional<TableSet> kept_tables(const TableShelf& shelf, const TableOrder& order) {
  const fs::path path = file_of(shelf, order);
  std::error_code error;
  const auto size = fs::file_size(path, error);
  std::ifstream in{path, std::ios::binary};
  if (error || size > most_bytes(order) || !in) return std::nullopt;
  std::string bytes(size, '\0');
  if (!in.read(bytes.data(), static_cast<std::streamsize>(size))) return std::nullopt;
  auto tables = tables_from(bytes, order);
  if (tables) mark_used(path);
  return tables;
}

Result<Written> keep_tables(const TableShelf& shelf, const TableOrder& order, const TableSet& tables) {
  std::error_code error;  // a folder that can't be made is told by the writing
  fs::create_directories(folder_of(shelf), error);
  return write_whole_file(file_of(shelf, order), table_file(order, tables));
}

void throw_away_oldest(const TableShelf& shelf) {
  std::vector<KeptFile> files = kept_files(shelf);
  std::ranges::sort(files, {}, &KeptFile::used);
  std::uintmax_t bytes = 0;
  for (const KeptFile& file : files) bytes += file.bytes;
  for (const KeptFile& file : files) {
    if (bytes <= shelf.most_bytes && !is_left_behind(file)) continue;
    std::error_code gone;
    fs::remove(file.path, gone);
    bytes -= file.bytes;
  }
}

KeptSets kept_sets(const std::optional<TableShelf>& shelf, const TablesNeeded& needed,
                   const std::function<void(std::size_t, const std::function<void(std::size_t)>&)>& do_each) {
  KeptSets kept(needed.orders.size());
  if (shelf) do_each(kept.size(), [&](std::size_t i) { kept[i] = kept_tables(*shelf, needed.orders[i]); });
  return kept;
}

TablesMade kept_or_made(const std::optional<TableShelf>& shelf, const TablesNeeded& needed, const TableMaker& maker) {
  return with_others_made(kept_sets(shelf, needed, maker.do_each), shelf, needed, maker);
}

TablesMade with_others_made(KeptSets kept, const std::optional<TableShelf>& shelf, const TablesNeeded& needed,
                            const TableMaker& maker) {
  TablesMade made{std::vector<TableSet>(needed.orders.size()), std::nullopt};
  std::vector<std::size_t> missing;
  for (std::size_t i = 0; i < kept.size(); ++i) {
    if (kept[i]) made.sets[i] = *std::move(kept[i]);
    if (!kept[i]) missing.push_back(i);
  }
  if (missing.empty()) return made;
  Making making(shelf, needed, maker);
  maker.do_each(missing.size(), [&](std::size_t i) { making.make(missing[i], missing.size(), made); });
  if (shelf) throw_away_oldest(*shelf);
  return made;
}

}  // namespace floatwright
