#include "engine/trip/timetable.hpp"

#include <algorithm>
#include <cmath>

#include "engine/trip/closed_water.hpp"
#include "engine/trip/dam_fronts.hpp"
#include "engine/trip/fast_rise.hpp"
#include "engine/trip/local_time.hpp"
#include "engine/trip/season.hpp"
#include "engine/water/floating_speed.hpp"

namespace floatwright {
namespace {

// All judgement.
constexpr Duration kPortageIfNotTyped = minutes(60.0);
constexpr Duration kSlack = minutes(30.0);
constexpr Duration kLongestRow = hours(2.0);
constexpr Period kTenMinutes = std::chrono::minutes{10};

Instant up_to_ten_minutes(Instant t) {
  return Instant{((t.time_since_epoch() + kTenMinutes - Period{1}) / kTenMinutes) * kTenMinutes};
}

double pace_of_boat(const RiverDay& day) {
  return day.learned == nullptr ? 1.0 : std::exp(pace_of(*day.learned, day.settings.boat).ln);
}

Speed boat_speed(const RiverDay& day, std::size_t reach, Instant t) {
  const auto flow = known_flow(day, reach, t);
  const bool runs = flow.has_value() && flow->middle > Discharge{};
  return floating_speed(day.river, day.graph.reaches[reach], runs ? std::optional(flow->middle) : std::nullopt,
                        pace_of_boat(day));
}

// A closure by hours is looked at when the hours are known.
bool can_be_fished(const RiverDay& day, const Passage& passage) {
  return !closed_all_day(day, passage) && !waters_of(day, passage).empty();
}

bool closed_meanwhile(const RiverDay& day, const TimedPassage& row) {
  return !closures_met(day, row.passage, row.arrive, row.leave).empty();
}

std::vector<Passage> rows_of(const RiverDay& day, RiverPlace from, RiverPlace to, Instant launch) {
  std::vector<Passage> rows;
  for (const Passage& passage : passages(day, from, to)) {
    const double share = time_afloat(day, passage.from, passage.to, launch) / kLongestRow;
    const int parts = passage.lake ? 1 : std::clamp(static_cast<int>(std::ceil(share)), 1, 24);
    for (const Passage& part : cut_evenly(day, passage, parts)) rows.push_back(part);
  }
  return rows;
}

// A hazard that must be portaged above a flow only is floated under it, where even the high case is under it.
bool portage_needed(const RiverDay& day, const Passage& passage, std::size_t hazard, Instant t) {
  const auto& above = day.river.hazards[hazard].above_flow;
  const auto flow = known_flow(day, passage.reach, t);
  return !above || !flow.has_value() || flow->high > *above;
}

// One carry goes round all of them; the longest typed.
Duration portage_time(const River& river, const Passage& passage) {
  Duration longest;
  for (const std::size_t hazard : passage.portages)
    longest = std::max(longest, river.hazards[hazard].portage_time.value_or(kPortageIfNotTyped));
  return longest;
}

// First guess with the flow at launch: who gets the stops, and where the middle of the day is.
std::vector<TimedPassage> shared_out(const RiverDay& day, const std::vector<Passage>& rows, Instant launch) {
  std::vector<TimedPassage> timed;
  Duration fishable, all;
  for (const Passage& passage : rows) {
    TimedPassage row{.passage = passage, .afloat = time_afloat(day, passage.from, passage.to, launch)};
    if (can_be_fished(day, passage)) fishable = fishable + row.afloat;
    all = all + row.afloat;
    timed.push_back(row);
  }
  Duration so_far;
  bool eaten = false;
  for (TimedPassage& row : timed) {
    if (can_be_fished(day, row.passage)) row.stops = day.settings.stops_per_trip * (row.afloat / fishable);
    so_far = so_far + row.afloat;
    if (!eaten && so_far >= 0.5 * all) {
      row.lunch = day.settings.lunch;
      eaten = true;
    }
  }
  return timed;
}

}  // namespace

Instant TimedPassage::read_at() const {
  constexpr Period kHalfHour = std::chrono::minutes{30};
  const auto middle = (arrive + (leave - arrive) / 2).time_since_epoch();
  return Instant{(middle + kHalfHour / 2) / kHalfHour * kHalfHour};
}

Duration time_afloat(const RiverDay& day, RiverPlace from, RiverPlace to, Instant t) {
  Duration time;
  for (const std::size_t index : day.graph.between(from, to)) {
    const Reach& reach = day.graph.reaches[index];
    const Length within = std::min(from, reach.from) - std::max(to, reach.to);
    if (within > Length{}) time = time + within / boat_speed(day, index, t);
  }
  return time;
}

Instant launch_time(const RiverDay& day, const SunDay& sun) {
  Instant launch = at_local(day.day, day.settings.launch.value_or(day.settings.earliest_launch), day.river.time_zone);
  if (sun.civil_dawn.has_value()) launch = std::max(launch, up_to_ten_minutes(*sun.civil_dawn));
  if (local_date(day.now, day.river.time_zone) == day.day) launch = std::max(launch, up_to_ten_minutes(day.now));
  return launch;
}

Timetable timetable(const RiverDay& day, RiverPlace from, RiverPlace to, Instant launch) {
  Timetable table{.rows = shared_out(day, rows_of(day, from, to, launch), launch), .launch = launch};
  Instant t = launch;
  for (TimedPassage& row : table.rows) {
    row.arrive = t;
    row.afloat = time_afloat(day, row.passage.from, row.passage.to, t);
    row.leave = t + period(row.afloat + row.stops + row.lunch);
    row.passage.rises = rise_expected(day, row.passage.from, row.passage.to, row.arrive, row.leave) || fast_rise(day, row);
    row.fished = can_be_fished(day, row.passage) && !closed_meanwhile(day, row);
    std::erase_if(row.passage.portages, [&](std::size_t i) { return !portage_needed(day, row.passage, i, row.leave); });
    row.portage = portage_time(day.river, row.passage);
    t = row.leave + period(row.portage);
  }
  table.end = t;
  table.off_by = up_to_ten_minutes(t + period(kSlack));
  return table;
}

}  // namespace floatwright
