#include "engine/trip/stretches.hpp"

#include <algorithm>
#include <numeric>

#include "engine/trip/closed_water.hpp"
#include "engine/trip/flow_limits.hpp"
#include "engine/trip/heat.hpp"

namespace floatwright {
namespace {

using Broken = std::optional<BrokenLimit>;

Broken access_limit(const Access& access) {
  if (access.closed) return BrokenLimit{.kind = LimitKind::AccessClosed, .where = access.name};
  if (!access.trailer) return BrokenLimit{.kind = LimitKind::NoTrailer, .where = access.name};
  return std::nullopt;
}

Broken length_limit(const Settings& settings, Length length) {
  // A metre of grace: a stretch of just the typed length is allowed.
  if (settings.least_stretch && length + metres(1.0) < *settings.least_stretch) {
    return BrokenLimit{.kind = LimitKind::TooShort, .length = length, .length_limit = settings.least_stretch};
  }
  if (settings.most_stretch && length - metres(1.0) > *settings.most_stretch) {
    return BrokenLimit{.kind = LimitKind::TooLong, .length = length, .length_limit = settings.most_stretch};
  }
  return std::nullopt;
}

Broken closed_all_along(const RiverDay& day, const Timetable& times) {
  std::vector<std::size_t> met;
  for (const TimedPassage& row : times.rows) {
    const auto here = closures_met(day, row.passage, row.arrive, row.leave);
    if (here.empty()) return std::nullopt;
    met.insert(met.end(), here.begin(), here.end());
  }
  if (met.empty()) return std::nullopt;
  return BrokenLimit{.kind = LimitKind::ClosedWater, .where = why_closed(day.river, met)};
}

Broken daylight_limit(const RiverDay& day, const Timetable& times, const SunDay& sun) {
  const Instant latest = at_latest_off(day);
  if (times.off_by > latest) return BrokenLimit{.kind = LimitKind::OffTooLate, .at = times.off_by, .at_limit = latest};
  const Measured<Instant> light = last_light(sun);
  if (!light.has_value() || times.end <= *light) return std::nullopt;
  return BrokenLimit{.kind = LimitKind::AfterDark,
                     .where = sun.sunset.has_value() ? "sunset" : "dusk",
                     .at = times.end,
                     .at_limit = *light};
}

Broken limit_on_the_way(const RiverDay& day, const Stretch& stretch, const SunDay& sun) {
  if (auto closed = closed_all_along(day, stretch.times)) return closed;
  if (auto flow = flow_limit(day, stretch.times)) return flow;
  const HeatLimits limits = heat_limits(day.river, day.settings);
  if (auto heat = heat_limit(heat_of(day, stretch.times, limits), limits, stretch.times.launch)) return heat;
  return daylight_limit(day, stretch.times, sun);
}

Stretch looked_at(const RiverDay& day, std::size_t put_in, std::size_t take_out, const SunDay& sun) {
  const Access& from = day.river.accesses[put_in];
  const Access& to = day.river.accesses[take_out];
  Stretch stretch{.put_in = put_in, .take_out = take_out,
                  .times = timetable(day, from.place, to.place, launch_time(day, sun))};
  stretch.broken = access_limit(from);
  if (!stretch.broken) stretch.broken = access_limit(to);
  if (!stretch.broken) stretch.broken = length_limit(day.settings, from.place - to.place);
  if (!stretch.broken) stretch.broken = limit_on_the_way(day, stretch, sun);
  return stretch;
}

bool asked_for(const std::optional<std::string>& wanted, const Access& access) { return !wanted || *wanted == access.id; }

constexpr std::size_t kAllTold = 24;  // accesses: 276 stretches

// So far that whatever lies below is too far as well. Stops are shared out anew over a longer stretch, and the flow there
// is another at another hour: hence the hour.
bool is_far_too_long(const RiverDay& day, const Stretch& stretch, const SunDay& sun) {
  constexpr Period kSurely = std::chrono::hours{1};
  const auto& accesses = day.river.accesses;
  const auto length = length_limit(day.settings, accesses[stretch.put_in].place - accesses[stretch.take_out].place);
  if (length && length->kind == LimitKind::TooLong) return true;
  if (stretch.times.off_by > at_latest_off(day) + kSurely) return true;
  const Measured<Instant> light = last_light(sun);
  return light.has_value() && stretch.times.end > *light + kSurely;
}

std::vector<std::size_t> downstream_order(const std::vector<Access>& accesses) {
  std::vector<std::size_t> order(accesses.size());
  std::iota(order.begin(), order.end(), std::size_t{0});
  std::ranges::stable_sort(order, std::ranges::greater{}, [&](std::size_t i) { return accesses[i].place; });
  return order;
}

}  // namespace

std::vector<Stretch> stretches(const RiverDay& day) {
  std::vector<Stretch> found;
  const auto& accesses = day.river.accesses;
  const bool all_told = accesses.size() <= kAllTold;
  const std::vector<std::size_t> downstream = downstream_order(accesses);
  for (const std::size_t from : downstream) {
    if (!asked_for(day.settings.from, accesses[from])) continue;
    const SunDay sun = sun_over(day, accesses[from].place);
    for (const std::size_t to : downstream) {
      if (!asked_for(day.settings.to, accesses[to])) continue;
      if (day.graph.between(accesses[from].place, accesses[to].place).empty()) continue;
      found.push_back(looked_at(day, from, to, sun));
      if (!all_told && is_far_too_long(day, found.back(), sun)) break;
    }
  }
  return found;
}

std::string say_limit(const BrokenLimit& limit) {
  switch (limit.kind) {
    case LimitKind::AccessClosed: return limit.where + " is closed";
    case LimitKind::NoTrailer: return "no trailer can be brought to the water at " + limit.where;
    case LimitKind::TooShort: return "shorter than the least length asked for";
    case LimitKind::TooLong: return "longer than the most length asked for";
    case LimitKind::ClosedWater: return "all of it is closed that day: " + limit.where;
    case LimitKind::FlowBelowBoat: return "too little water for the boat at " + limit.where + " in the low case";
    case LimitKind::FlowAboveBoat: return "too much water for the boat at " + limit.where + " in the high case";
    case LimitKind::HazardFlow: return "the flow is beyond what was typed for " + limit.where;
    case LimitKind::OffTooLate: return "off the water later than the latest hour asked for";
    case LimitKind::AfterDark: return "not off the water by " + limit.where;
    case LimitKind::NoHours: return "no hour can be fished at " + limit.where;
    case LimitKind::TooWarm: return "too warm for trout from the launch on, at " + limit.where;
  }
  return "a limit is broken";
}

}  // namespace floatwright
