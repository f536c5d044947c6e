#pragma once
// Which lines earn their place on a river: its past days carried to every reach, each water fished on paper with every
// line owned or considered, and what each line and set of lines covers of it. `season` prints it.
#include <functional>
#include <memory>

#include "engine/coverage/coverage.hpp"
#include "engine/plan_boats.hpp"

namespace floatwright {

struct CoverageAsked {
  River river;
  ListedTackle tackle;  // engine/coverage/usual_lines.hpp adds some to think of where nobody typed any
  Settings settings;
  Judgement judgement;
  std::vector<GaugeRecord> records;  // by River::gauges index, the whole of each
  std::optional<std::chrono::sys_days> since{};  // none: from the first date on record
  std::shared_ptr<const FishingTables> tables{};  // of tables_for_coverage(); none: every cast is worked out
  DoEach do_each = one_after_the_other;
  std::function<void(std::size_t done, std::size_t of)> progress = [](std::size_t, std::size_t) {};
};

[[nodiscard]] TablesNeeded tables_for_coverage(const CoverageAsked& asked);

// Without a single flow on record, or after `since`: `counted.dates` is 0. The answer does not hang on `do_each`.
[[nodiscard]] Coverage coverage_of_river(const CoverageAsked& asked);

}  // namespace floatwright
