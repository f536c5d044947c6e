#include "adapters/cli/day_tables.hpp"

#include <utility>

#include "adapters/cli/message.hpp"
#include "adapters/cli/progress_bar.hpp"
#include "adapters/cli/side_by_side.hpp"
#include "adapters/out/state/cache_directory.hpp"
#include "adapters/out/state/kept_tables.hpp"
#include "engine/choice/limits.hpp"

namespace floatwright {

std::shared_ptr<const FishingTables> tables_at_hand(TablesNeeded needed, const Tackle& tackle, const Judgement& judgement,
                                                    HowTold told) {
  const DriftLimits limits = drift_limits(judgement);
  ProgressBar bar("fishing tables", !told.quiet);
  const auto show = [&](std::size_t done, std::size_t of) { bar.show(done, of); };
  const auto cache = cache_directory();
  const std::optional<TableShelf> shelf = cache ? std::optional(TableShelf{*cache}) : std::nullopt;
  TablesMade made = kept_or_made(shelf, needed, {tackle, limits, on_all_cores, show});
  const auto& not_kept = cache ? made.not_kept : std::optional(cache.error());
  if (told.verbose && not_kept) tell(*not_kept);
  return std::make_shared<const FishingTables>(std::move(needed), std::move(made.sets));
}

std::shared_ptr<const FishingTables> day_tables(const DayInputs& day, const std::vector<BoatOrder>& boats,
                                                HowTold told) {
  return tables_at_hand(tables_needed(day, boats), day.tackle, day.judgement, told);
}

}  // namespace floatwright
