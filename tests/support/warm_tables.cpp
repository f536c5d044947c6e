#include "tests/support/warm_tables.hpp"

#include <utility>

#include "adapters/out/state/kept_tables.hpp"
#include "engine/choice/limits.hpp"

namespace floatwright::testing {

FishingTables warm_tables(const Tackle& tackle, const Preferences& preferences, const Judgement& judgement) {
  TablesNeeded needed;
  add_tables_needed(needed, tackle, preferences, platforms_fished(preferences), judgement);
  const DriftLimits limits = drift_limits(judgement);
  const auto each = [](std::size_t count, const std::function<void(std::size_t)>& work) {
    for (std::size_t i = 0; i < count; ++i) work(i);
  };
  auto made = kept_or_made(TableShelf{FLOATWRIGHT_TESTS_CACHE}, needed,
                           {tackle, limits, each, [](std::size_t, std::size_t) {}});
  return {std::move(needed), std::move(made.sets)};
}

}  // namespace floatwright::testing
