#pragma once
// The parts of the guide's plan in the order they stand on the page. Each adds its blocks, or none when it has nothing
// to say. They share what was looked up once: the clock, the rods, the stretch floated.
#include <optional>
#include <string>
#include <vector>

#include "engine/plan_day.hpp"
#include "engine/wording/clock.hpp"
#include "engine/wording/page.hpp"
#include "engine/wording/rods_of_the_day.hpp"
#include "engine/wording/say_river_state.hpp"

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
// WHY: what decides, the river, the reason of each rod.
void add_why(Page& page, const Told& told);
// FLOAT, WHY, ELSE, NOT; at a spot AT, WHY, NOT
void add_stretches(Page& page, const Told& told);
void add_ruled_out(Page& page, const Told& told);
// What to rig before launch, and the bag; brief: two lines a rod at most, not when it is first used, and its changes.
void add_rods(Page& page, const Told& told, bool brief = false);
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
// The pencil boxes: what `log` asks for.
void add_log_boxes(Page& page, const Told& told);

// Helpers that several parts use.
// "Boat 1   Wren, 2 anglers" on a day of several boats; else "Wren   2 anglers". Empty when nobody is named.
[[nodiscard]] std::string say_boat(const Told& told);
[[nodiscard]] bool at_spot(const Told& told);  // the day is at one place: no boat, launch or take-out in the words
[[nodiscard]] std::string fished_hours(const PlannedStretch& spot, const LocalClock& clock);  // "07:30-12:00 and 14:10-19:00"
[[nodiscard]] std::string aboard(const Told& told);    // " aboard"; on the bank nothing
[[nodiscard]] std::string not_at_hand(const Told& told);  // " (its rod is not in the boat)"
// Why that rig in that water, with the next best and whether its rod is at hand.
[[nodiscard]] std::string reason(const Told& told, const PlannedWater& water);
// "LANTERN RIVER  Mill Bridge -> Old Ferry  11.6 mi", the day at the right.
[[nodiscard]] Heading float_heading(const Told& told);
// "Wren   1 angler   PUT IN 07:30   OFF BY 16:10   sun 05:56-20:46"
[[nodiscard]] std::string hours_line(const Told& told);
// At launch: "1,850 cfs (1,700-2,050), falling slowly, rising about 12:40"; "not known (why), falling".
[[nodiscard]] std::string flow_and_trend(const Told& told);
// "Water 47 F, 52 F by 15:30"; of water that nobody can tell, what to do.
[[nodiscard]] std::string water_temperature(const Told& told);
// "Clear (turbidity 2 FNU)", "Clear to about 5 ft" as seen by the guide; "Clarity not known".
[[nodiscard]] std::string water_clarity(const Told& told);
// What makes the readings doubtful, a sentence each: OLD READINGS (14 h), NO READING of ..., TIMES ARE UTC.
[[nodiscard]] std::vector<std::string> doubts(const Told& told);
[[nodiscard]] std::optional<Duration> oldest_flow_age(const DayPlan& plan);
// The day's and the float's, heaviest first; of a day without one those of all stretches.
[[nodiscard]] std::vector<Caution> cautions_by_weight(const Told& told);
// "09:10 Cottonwood bend: A to sinking tip 10 ft 4 in/s, ...", every change of line or fly in its order.
[[nodiscard]] std::vector<std::string> rig_change_lines(const Told& told);
// "Same lines from 1,600 to 1,670 cfs at the put-in at launch."; empty where it was not looked at everywhere.
[[nodiscard]] std::string say_where_lines_hold(const Told& told);
[[nodiscard]] std::string why_nothing(const Told& told);  // "every stretch breaks a limit"
[[nodiscard]] std::string joined(const std::vector<std::string>& words);               // "a, b and c"
[[nodiscard]] std::string say_range(const Told& told, const PlannedStretch& stretch);  // "Mill Bridge -> Old Ferry"; a spot's name
// The cautions, heaviest first, the same sentence at several places once; brief: without where a limit comes from.
[[nodiscard]] std::vector<std::string> care_lines(const Told& told, bool brief);
[[nodiscard]] const GaugeOutlook* main_outlook(const DayPlan& plan);
[[nodiscard]] StateWords state_words(const Told& told);  // of the main gauge
[[nodiscard]] std::string name_of(const PlannedReach& reach);
// "at Mill run"; of water that nobody named "below Old Ferry".
[[nodiscard]] std::string at_reach(const PlannedReach& reach);
// The same with the kind of water where the reach has several: "at Mill run (run)".
[[nodiscard]] std::string at_water(const PlannedReach& reach, const PlannedWater& water);

// "ANCHOR, tight swing"; where the river may rise on, "ANCHOR unless it rises, tight swing".
[[nodiscard]] std::string say_how(const Told& told, const Technique& technique);

// A line that takes over when the flow leaves what the choice holds for.
struct TakesOver {
  bool under = false;  // below `at`, else above it
  Discharge at;
  std::vector<std::string> where;  // "at Mill run (run)", the nearest flow first
  std::vector<Rig> from;           // the lines it takes over from
  ScoredRig to;
  double away = 0.0;     // |ln| of the nearest of those flows over the one expected there
  bool likely = true;    // within or near the band of flow there
  bool in_boat = false;  // its rod is
};
// Of the stretch floated, one for each line and side: the likely ones first, of these those whose rod is in the boat,
// then the nearest flow first.
[[nodiscard]] std::vector<TakesOver> lines_that_take_over(const Told& told);

// Said on every page: whose word comes before this one.
inline constexpr const char* kFoot =
    "Made from public readings and your own notes, which may be wrong or old. It does not know today's rules, "
    "closures, "
    "releases or wood in the river. The law, the agency and a licensed guide on the water decide.";

}  // namespace floatwright
