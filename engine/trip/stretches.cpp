#include "engine/trip/stretches.hpp"

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
  const Closure* closure = nullptr;
  for (const TimedPassage& row : times.rows) {
    if (!row.passage.closure || row.fished) return std::nullopt;
    closure = &day.river.closures[*row.passage.closure];
  }
  if (closure == nullptr) return std::nullopt;
  return BrokenLimit{.kind = LimitKind::ClosedWater, .where = closure->why};
}

Broken daylight_limit(const RiverDay& day, const Timetable& times, const SunDay& sun) {
  const Instant latest = at_latest_off(day);
  if (times.off_by > latest) return BrokenLimit{.kind = LimitKind::OffTooLate, .at = times.off_by, .at_limit = latest};
  if (sun.sunset.has_value() && times.end > *sun.sunset) {
    return BrokenLimit{.kind = LimitKind::AfterDark, .at = times.end, .at_limit = *sun.sunset};
  }
  return std::nullopt;
}

Broken limit_on_the_way(const RiverDay& day, const Stretch& stretch, const SunDay& sun) {
  if (auto closed = closed_all_along(day, stretch.times)) return closed;
  if (auto flow = flow_limit(day, stretch.times)) return flow;
  const HeatLimits limits = heat_limits(day.river, day.settings);
  if (auto heat = heat_limit(heat_of(day, stretch.times, limits), limits, stretch.times.launch)) return heat;
  return daylight_limit(day, stretch.times, sun);
}

Stretch looked_at(const RiverDay& day, std::size_t put_in, std::size_t take_out) {
  const Access& from = day.river.accesses[put_in];
  const Access& to = day.river.accesses[take_out];
  const SunDay sun = sun_over(day, from.place);
  Stretch stretch{.put_in = put_in, .take_out = take_out,
                  .times = timetable(day, from.place, to.place, launch_time(day, sun))};
  stretch.broken = access_limit(from);
  if (!stretch.broken) stretch.broken = access_limit(to);
  if (!stretch.broken) stretch.broken = length_limit(day.settings, from.place - to.place);
  if (!stretch.broken) stretch.broken = limit_on_the_way(day, stretch, sun);
  return stretch;
}

bool asked_for(const Settings& settings, const Access& from, const Access& to) {
  return (!settings.from || *settings.from == from.id) && (!settings.to || *settings.to == to.id);
}

}  // namespace

std::vector<Stretch> stretches(const RiverDay& day) {
  std::vector<Stretch> found;
  const auto& accesses = day.river.accesses;
  for (std::size_t i = 0; i < accesses.size(); ++i) {
    for (std::size_t j = 0; j < accesses.size(); ++j) {
      if (!asked_for(day.settings, accesses[i], accesses[j])) continue;
      if (!day.graph.between(accesses[i].place, accesses[j].place).empty()) found.push_back(looked_at(day, i, j));
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
    case LimitKind::AfterDark: return "not off the water by sunset";
    case LimitKind::NoHours: return "no hour can be fished at " + limit.where;
    case LimitKind::TooWarm: return "too warm for trout from the launch on, at " + limit.where;
  }
  return "a limit is broken";
}

}  // namespace floatwright
