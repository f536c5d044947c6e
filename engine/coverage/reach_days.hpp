#pragma once
// Every day of the record on every reach of the stem: which could have been fished, in what water, and why the others could
// not. A boat or hazard outside its flows, a closure, water at the heat stop and a lake are not fished; a date without a
// flow is a gap. A dated closure is taken to stand on the same days of every year: what is asked is what to own, not what
// was allowed then. Hours closed in part of a day leave the day.
#include <chrono>
#include <vector>

#include "engine/coverage/recorded_river.hpp"
#include "engine/trip/passages.hpp"

namespace floatwright {

// One passage with described water, on one date.
struct ReachDay {
  std::size_t reach = 0;  // into ReachDays::reaches
  std::chrono::sys_days date{};
  Discharge flow{};                          // of the whole river beside it
  std::optional<Temperature> temperature{};  // none: not known
  double hatch = 0.0;                        // share of the hours fished in which a listed hatch is on
};

struct DaysCounted {
  std::chrono::sys_days first{}, last{};  // of the dates looked at
  int dates = 0, gaps = 0;                // gaps: dates without any flow
  int fishable = 0;                       // reach-days
  int temperature_known = 0;              // of these
  int closed = 0, outside_flows = 0, too_warm = 0, no_flow = 0;  // reach-days left out
};

struct ReachDays {
  std::vector<Passage> reaches;
  std::vector<ReachDay> days;
  DaysCounted counted;
};

struct RecordAsked {
  const River& river;
  const RiverGraph& graph;
  const Settings& settings;
  const Tackle& tackle;
  const Judgement& judgement;
  std::chrono::sys_days first{}, last{};  // dates, both included
};
[[nodiscard]] ReachDays reach_days(const RecordAsked& asked, const RecordedRiver& record);

// The stem's passages that hold described, running water, from the top down, cut where any closure begins or ends.
[[nodiscard]] std::vector<Passage> fished_reaches(const RecordAsked& asked);

[[nodiscard]] bool closed_in_any_year(const Closure& closure, std::chrono::year_month_day date);

}  // namespace floatwright
