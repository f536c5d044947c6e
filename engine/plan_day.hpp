#pragma once
// The day, from values to values: the body of plan_day is the table of contents of the engine.
#include <memory>
#include <optional>

#include "engine/readings/weather.hpp"
#include "engine/sinking/fishing_tables.hpp"
#include "engine/trip/day_plan.hpp"
#include "engine/trip/do_each.hpp"
#include "engine/trip/handed_out.hpp"
#include "engine/trip/tuned.hpp"
#include "engine/trip/water_book.hpp"

namespace floatwright {

struct DayInputs {
  River river;
  Tackle tackle;
  Settings settings;
  Judgement judgement;
  std::vector<GaugeRecord> records;  // by River::gauges index; an empty record is a gauge that did not answer
  std::chrono::year_month_day day{};
  Instant now{};
  std::optional<std::size_t> spot{};  // index into River::spots: the day there instead of a float
  Tuned tuned{};                      // by `tune`; empty: stated defaults
  std::optional<Weather> weather{};   // none: not known
  Learned learned{};                  // of the log; empty: nothing was met
  std::optional<HandedOut> before{};  // what was handed out for this day last, if anything
  std::shared_ptr<const FishingTables> tables{};  // of tables_needed(); none: every cast is worked out, which is dear
};

// The fishing tables that this day's choices read; those known already are not asked for again.
void add_tables_needed(TablesNeeded& needed, const DayInputs& in);

// Waters are scored as `do_each` does them.
[[nodiscard]] DayPlan plan_day(const DayInputs& in, const DoEach& do_each = one_after_the_other);

// One boat's day: the plan and what it was made from. A day without a list of boats is one boat's.
struct BoatDay {
  DayInputs in;
  DayPlan plan;
};

[[nodiscard]] BoatDay boat_day(DayInputs in, const DoEach& do_each = one_after_the_other);

// The two halves of plan_day, for boats that share the first: the river's water of the day, and what people do in it.
struct WaterOfDay {
  RiverGraph graph;
  std::vector<GaugeOutlook> outlooks;
  RiverFlows flows;
  RiverTemperatures temperatures;
  LikelyWaters likely;
};
[[nodiscard]] WaterOfDay water_of_day(const DayInputs& in);
[[nodiscard]] RiverDay river_day(const DayInputs& in, const WaterOfDay& water);
// `book`: of this day, or of people on it who fish alike.
[[nodiscard]] DayPlan planned_day(const DayInputs& in, const WaterOfDay& water, WaterBook& book,
                                  const DoEach& do_each = one_after_the_other);

}  // namespace floatwright
