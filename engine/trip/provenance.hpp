#pragma once
// Where the plan's readings came from and how old they are.
#include <optional>

#include "engine/trip/day_plan.hpp"
#include "engine/trip/river_day.hpp"

namespace floatwright {

// The gauge said nothing at all.
[[nodiscard]] bool is_silent(const GaugeRecord& record);
// Its newest usable flow; of a gauge that measures neither flow nor stage, its newest usable reading of anything.
[[nodiscard]] std::optional<Instant> newest_usable(const GaugeRecord& record);
[[nodiscard]] inline bool is_old(Instant read, Instant now) { return now - read > kStaleAfter; }

// Readings, missing gauges, notes, stale and nothing.
void add_provenance(const RiverDay& day, DayPlan& plan);

}  // namespace floatwright
