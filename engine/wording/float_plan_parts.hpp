#pragma once
// The parts of the guide's plan in the order they stand on the page. Each adds its blocks, or none when it has nothing
// to say. They share what was looked up once: the clock, the rods, the stretch floated.
#include <string>
#include <vector>

#include "engine/plan_day.hpp"
#include "engine/wording/clock.hpp"
#include "engine/wording/page.hpp"
#include "engine/wording/rods_of_the_day.hpp"

namespace floatwright {

struct Told {
  const DayPlan& plan;
  const DayInputs& in;
  UnitSystem units = UnitSystem::Us;
  LocalClock clock;
  const PlannedStretch* floated = nullptr;  // the best stretch that breaks no limit; none: no plan
  RodsOfTheDay rods;                        // of `floated`
  std::string day_word;                     // "today", "tomorrow", else the weekday with its date
};

[[nodiscard]] Told told(const DayPlan& plan, const DayInputs& in);

// Heading, the hours of the day, the river in one line; what makes the readings doubtful.
void add_head(Page& page, const Told& told);
void add_no_plan_head(Page& page, const Told& told);
// FLOAT, WHY, ELSE, NOT
void add_stretches(Page& page, const Told& told);
void add_ruled_out(Page& page, const Told& told);
// What to rig before launch, and the bag.
void add_rods(Page& page, const Told& told);
// When to be where, how deep and fast, which rod, how.
void add_reaches(Page& page, const Told& told);
// ALSO: rigs as good, and the line for one who would rather fish another way.
void add_also(Page& page, const Told& told);
void add_hours(Page& page, const Told& told);
// RODS: changes in the day.  IF: what would change the plan.
void add_changes(Page& page, const Told& told);
void add_ifs(Page& page, const Told& told);
// CARE, FROM and the foot.
void add_care(Page& page, const Told& told);
void add_sources(Page& page, const Told& told);
void add_foot(Page& page, const Told& told);

// Helpers that several parts use.
[[nodiscard]] std::string joined(const std::vector<std::string>& words);               // "a, b and c"
[[nodiscard]] std::string say_range(const Told& told, const PlannedStretch& stretch);  // "Mill Bridge -> Old Ferry"
[[nodiscard]] const GaugeOutlook* main_outlook(const DayPlan& plan);

// A line that takes over when the flow leaves what the choice holds for.
struct TakesOver {
  bool under = false;  // below `at`, else above it
  Discharge at;
  std::vector<std::string> where;  // reaches, the nearest flow first
  Rig from;
  ScoredRig to;
};
// Of the stretch floated, one for each pair of lines, nearest flow first.
[[nodiscard]] std::vector<TakesOver> lines_that_take_over(const Told& told);

// Said on every page: whose word comes before this one.
inline constexpr const char* kFoot =
    "Made from public readings and your own notes, which may be wrong or old. It does not know today's rules, "
    "closures, "
    "releases or wood in the river. The law, the agency and a licensed guide on the water decide.";

}  // namespace floatwright
