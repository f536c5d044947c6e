#include "engine/wording/say_limit.hpp"

#include <fmt/format.h>

#include "engine/wording/typed.hpp"
#include "engine/wording/units.hpp"

namespace floatwright {
namespace {

std::string place_before(const BrokenLimit& limit) { return limit.where.empty() ? "" : typed(limit.where) + ": "; }

std::string flow_words(const BrokenLimit& l, const char* against, UnitSystem units) {
  if (!l.flow || !l.flow_limit) return "";
  return fmt::format("{}{} is {} the limit of {}", place_before(l), say_flow(*l.flow, units), against,
                     say_flow(*l.flow_limit, units));
}

// A hazard has a flow above which or under which it is not run; which one it was, the numbers tell.
std::string hazard_words(const BrokenLimit& l, UnitSystem units) {
  const bool over = l.flow && l.flow_limit && *l.flow > *l.flow_limit;
  return flow_words(l, over ? "over" : "under", units);
}

std::string length_words(const BrokenLimit& l, const char* against, const River& river, UnitSystem units) {
  if (!l.length_limit) return "";
  return fmt::format("{} than the {} you set", against, say_distance(*l.length_limit, river, units));
}

std::string hour_words(const BrokenLimit& l, const std::string& limit_name, const LocalClock& clock) {
  if (!l.at || !l.at_limit) return "";
  return fmt::format("off the water at {}, {} {}", clock.ten_minutes(*l.at), limit_name,
                     clock.ten_minutes_before(*l.at_limit));
}

std::string heat_words(const BrokenLimit& l, UnitSystem units) {
  if (!l.temperature || !l.temperature_limit) return "";
  return fmt::format("{}water {}, trout are left alone from {}", place_before(l),
                     say_temperature(*l.temperature, units), say_temperature(*l.temperature_limit, units));
}

std::string numbers(const BrokenLimit& l, const River& river, const LocalClock& clock, UnitSystem units) {
  switch (l.kind) {
    case LimitKind::TooShort:
      return length_words(l, "shorter", river, units);
    case LimitKind::TooLong:
      return length_words(l, "longer", river, units);
    case LimitKind::FlowBelowBoat:
      return flow_words(l, "under", units);
    case LimitKind::FlowAboveBoat:
      return flow_words(l, "over", units);
    case LimitKind::HazardFlow:
      return hazard_words(l, units);
    case LimitKind::OffTooLate:
      return hour_words(l, "your latest is", clock);
    case LimitKind::AfterDark:
      return hour_words(l, l.where, clock);
    case LimitKind::TooWarm:
      return heat_words(l, units);
    default:
      return "";
  }
}

}  // namespace

std::string say_why_not(const PlannedStretch& stretch, const River& river, const LocalClock& clock, UnitSystem units) {
  std::string words = stretch.limit ? numbers(*stretch.limit, river, clock, units) : "";
  if (words.empty()) words = without_stop(typed(stretch.why));
  return words.empty() ? "ruled out" : words;
}

}  // namespace floatwright
