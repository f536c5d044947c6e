#include "engine/trip/spot_hours.hpp"

#include <algorithm>

#include "engine/choice/techniques.hpp"
#include "engine/trip/closed_water.hpp"
#include "engine/trip/dam_fronts.hpp"
#include "engine/trip/flow_limits.hpp"
#include "engine/trip/heat.hpp"
#include "engine/trip/local_time.hpp"
#include "engine/trip/met_water.hpp"
#include "engine/trip/season.hpp"
#include "engine/trip/wading.hpp"

namespace floatwright {
namespace {

constexpr Period kStep = std::chrono::minutes{10};
constexpr Period kLongestRow = std::chrono::hours{2};  // each row is read at its own hour; judgement, as of a float

const char* const kTooWarm = "too warm for trout";
const char* const kOutsideTheBoat = "the flow is outside your boat's limits";
const char* const kRise = "more water may come from the dam";

struct Hours {
  Instant from{}, to{};
};

Hours hours_of_day(const RiverDay& day, const Passage& spot) {
  const SunDay sun = sun_over(day, spot.from);
  Instant to = at_latest_off(day);
  const Measured<Instant> light = last_light(sun);
  if (light.has_value()) to = std::min(to, Instant{light->time_since_epoch() / kStep * kStep});
  return {launch_time(day, sun), to};
}

Platform platform_of(const RiverDay& day, const Passage& spot) { return day.river.spots[*spot.spot].platform; }

bool nothing_to_wade(const RiverDay& day, const Passage& spot, Instant t) {
  const WadingLimits limits = wading_limits(day.settings);
  const auto& waters = waters_of(day, spot);
  return !waters.empty() && std::all_of(waters.begin(), waters.end(), [&](const Water& water) {
    const auto there = lane_at(day, spot, water, t);
    return there.has_value() && too_much_to_wade(*there, limits);
  });
}

// A row of ten minutes is out when either of its ends is.
std::string kept_out(const RiverDay& day, const Passage& spot, Hours then, const std::optional<Instant>& stop_by) {
  if (stop_by && then.to > *stop_by) return kTooWarm;
  const Platform platform = platform_of(day, spot);
  const auto either = [&](auto&& holds) { return holds(then.from) || holds(then.to); };
  const TimedPassage row{.passage = spot, .arrive = then.from, .leave = then.to};
  if (platform != Platform::Wading && flow_limit(day, Timetable{.rows = {row}})) return kOutsideTheBoat;
  if (stands(platform) && either([&](Instant t) { return rise_expected(day, spot.from, spot.to, t); })) return kRise;
  if (platform == Platform::Wading && either([&](Instant t) { return nothing_to_wade(day, spot, t); })) {
    return kTooMuchToWade;
  }
  return "";
}

std::optional<Instant> heat_stop(const RiverDay& day, const Passage& spot, Hours all) {
  Timetable whole{.rows = {{.passage = spot, .arrive = all.from, .leave = all.to}}, .launch = all.from};
  return heat_of(day, whole, heat_limits(day.river, day.settings)).stop_by;
}

bool same_rule(const TimedPassage& a, const TimedPassage& b) {
  return a.fished == b.fished && a.passage.closures == b.passage.closures;
}

// Reasons that follow each other without an hour of fishing between them are told in one row.
void join(TimedPassage& row, const TimedPassage& next) {
  row.leave = next.leave;
  if (row.kept_out.find(next.kept_out) == std::string::npos) row.kept_out += "; " + next.kept_out;
}

std::vector<TimedPassage> ruled(const RiverDay& day, const Passage& spot, Hours all) {
  std::vector<TimedPassage> rows;
  const auto stop_by = heat_stop(day, spot, all);
  for (Instant t = all.from; t < all.to; t += kStep) {
    TimedPassage row{.passage = spot, .arrive = t, .leave = std::min(t + kStep, all.to)};
    row.passage.closures = closures_met(day, spot, row.arrive, row.leave - Period{1});
    const bool closed = !row.passage.closures.empty();
    if (!closed) row.kept_out = kept_out(day, spot, {row.arrive, row.leave}, stop_by);
    row.fished = !closed && row.kept_out.empty();
    if (!rows.empty() && same_rule(rows.back(), row)) {
      join(rows.back(), row);
    } else {
      rows.push_back(row);
    }
  }
  return rows;
}

// Where a hatch begins or ends another rig may be the better one.
std::vector<Instant> hatch_ends(const RiverDay& day) {
  std::vector<Instant> ends;
  for (const Hatch& hatch : day.river.hatches) {
    if (!in_season(hatch.season, day.day)) continue;
    for (const Duration at : {hatch.hours.from, hatch.hours.to}) ends.push_back(at_local(day.day, at, day.river.time_zone));
  }
  std::sort(ends.begin(), ends.end());
  return ends;
}

void add_part(std::vector<TimedPassage>& rows, TimedPassage row, Instant from, Instant to) {
  row.arrive = from;
  row.leave = to;
  row.stops = duration(to - from);  // nobody drifts: all of it is fished
  rows.push_back(std::move(row));
}

void add_cut(std::vector<TimedPassage>& rows, const TimedPassage& row, const std::vector<Instant>& ends) {
  Instant from = row.arrive;
  const auto add_until = [&](Instant to) {
    const auto parts = std::max<Period::rep>(1, (to - from + kLongestRow - Period{1}) / kLongestRow);
    const auto cut = [&](Period::rep i) { return i == parts ? to : from + (to - from) * i / parts / kStep * kStep; };
    for (Period::rep i = 0; i < parts; ++i) add_part(rows, row, cut(i), cut(i + 1));
    from = to;
  };
  for (const Instant end : ends)
    if (end > from && end < row.leave) add_until(end);
  add_until(row.leave);
}

void set_hours_fished(Timetable& table) {
  const auto fished = [](const TimedPassage& row) { return row.fished; };
  const auto first = std::find_if(table.rows.begin(), table.rows.end(), fished);
  const auto last = std::find_if(table.rows.rbegin(), table.rows.rend(), fished);
  table.launch = first == table.rows.end() ? table.rows.front().arrive : first->arrive;
  table.end = last == table.rows.rend() ? table.rows.back().leave : last->leave;
  table.off_by = table.end;
}

}  // namespace

Timetable spot_hours(const RiverDay& day, const Passage& spot) {
  Timetable table;
  const auto ends = hatch_ends(day);
  for (const TimedPassage& row : ruled(day, spot, hours_of_day(day, spot))) {
    if (row.fished) add_cut(table.rows, row, ends);
    if (!row.fished) table.rows.push_back(row);
  }
  if (!table.rows.empty()) set_hours_fished(table);
  return table;
}

}  // namespace floatwright
