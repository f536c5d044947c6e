#include "adapters/cli/day_tables.hpp"

#include <atomic>
#include <utility>

#include "adapters/cli/message.hpp"
#include "adapters/cli/progress_bar.hpp"
#include "adapters/cli/side_by_side.hpp"
#include "adapters/out/state/cache_directory.hpp"
#include "adapters/out/state/kept_tables.hpp"
#include "engine/choice/limits.hpp"

namespace floatwright {

// What is needed, and what is kept of it; no shelf: why.
struct TablesRead {
  TablesNeeded needed;
  std::optional<TableShelf> shelf;
  std::optional<Failure> no_shelf;
  KeptSets kept;
};

struct TablesAhead::Turns {
  explicit Turns(TablesRead none_yet) : read(std::move(none_yet)) { read.kept.resize(read.needed.orders.size()); }
  // Each file is read by the thread that comes for it first.
  void take() {
    if (!read.shelf) return;
    for (std::size_t i = next++; i < read.kept.size(); i = next++)
      read.kept[i] = kept_tables(*read.shelf, read.needed.orders[i]);
  }
  TablesRead read;
  std::atomic<std::size_t> next = 0;
};

namespace {

// None read yet.
TablesRead on_the_shelf(TablesNeeded needed) {
  TablesRead read{std::move(needed), {}, {}, {}};
  const auto cache = cache_directory();
  if (cache) read.shelf = TableShelf{*cache};
  if (!cache) read.no_shelf = cache.error();
  return read;
}

std::shared_ptr<const FishingTables> with_the_others(TablesRead read, const Tackle& tackle, const Judgement& judgement,
                                                     HowTold told) {
  const DriftLimits limits = drift_limits(judgement);
  ProgressBar bar("fishing tables", !told.quiet);
  const auto show = [&](std::size_t done, std::size_t of) { bar.show(done, of); };
  TablesMade made =
      with_others_made(std::move(read.kept), read.shelf, read.needed, {tackle, limits, on_all_cores, show});
  const auto& not_kept = read.no_shelf ? read.no_shelf : made.not_kept;
  if (told.verbose && not_kept) tell(*not_kept);
  return std::make_shared<const FishingTables>(std::move(read.needed), std::move(made.sets));
}

}  // namespace

std::shared_ptr<const FishingTables> tables_at_hand(TablesNeeded needed, const Tackle& tackle,
                                                    const Judgement& judgement, HowTold told) {
  TablesRead read = on_the_shelf(std::move(needed));
  read.kept = kept_sets(read.shelf, read.needed, on_all_cores);
  return with_the_others(std::move(read), tackle, judgement, told);
}

std::shared_ptr<const FishingTables> day_tables(const DayInputs& day, const std::vector<BoatOrder>& boats,
                                                HowTold told) {
  return tables_at_hand(tables_needed(day, boats), day.tackle, day.judgement, told);
}

TablesAhead::TablesAhead(const DayInputs& day, const std::vector<BoatOrder>& boats)
    : turns_(std::make_unique<Turns>(on_the_shelf(tables_needed(day, boats)))),
      reading_(std::async(std::launch::async, [turns = turns_.get()] { turns->take(); })) {}

TablesAhead::TablesAhead(TablesAhead&&) noexcept = default;
TablesAhead::~TablesAhead() = default;

std::shared_ptr<const FishingTables> TablesAhead::at_hand(const Tackle& tackle, const Judgement& judgement,
                                                          HowTold told) {
  turns_->take();
  reading_.get();
  return with_the_others(std::move(turns_->read), tackle, judgement, told);
}

}  // namespace floatwright
