#include "engine/wording/changed_since.hpp"

#include <fmt/format.h>

#include <algorithm>
#include <cmath>

#include "engine/trip/heat.hpp"
#include "engine/wording/say_caution.hpp"
#include "engine/wording/say_rig.hpp"
#include "engine/wording/typed.hpp"
#include "engine/wording/units.hpp"

namespace floatwright {
namespace {

constexpr double kSameFlow = 0.05;                         // share
constexpr TemperatureChange kSameWater = kelvins(1.0);
constexpr Period kSameHour = std::chrono::minutes{10};
constexpr Mass kSameShot = grams(0.001);

struct Changes {
  const Told& told;
  const HandedOut& before;
  HandedOut now;
  std::vector<std::string> said;
};

std::string name(const std::string& typed_name, const std::string& id) { return typed(typed_name.empty() ? id : typed_name); }

std::string range(const StretchHandedOut& s) {
  const std::string from = name(s.from_name, s.from);
  return s.from == s.to ? from : from + " -> " + name(s.to_name, s.to);  // a spot
}

bool apart(Instant a, Instant b) { return a > b ? a - b >= kSameHour : b - a >= kSameHour; }

// Whether both can be compared further: the same stretch is floated.
bool same_stretch(Changes& c) {
  const auto &then = c.before.stretch, &now = c.now.stretch;
  if (!then && !now) return false;
  if (!now) {
    c.said.push_back("There is no plan now; it was " + range(*then) + ".");
    return false;
  }
  if (!then) {
    c.said.push_back("There is a plan now: " + range(*now) + "; there was none.");
    return false;
  }
  if (then->from == now->from && then->to == now->to) return true;
  c.said.push_back(fmt::format("FLOAT {}, not {}: rods and hours are all new.", range(*now), range(*then)));
  return false;
}

void compare_hours(Changes& c, const StretchHandedOut& then, const StretchHandedOut& now) {
  const auto hour = [&](Instant t) { return c.told.clock.ten_minutes(t); };
  const auto say = [&](const char* what, Instant a, Instant b) {
    if (apart(a, b)) c.said.push_back(fmt::format("{} {}, not {}.", what, hour(b), hour(a)));
  };
  const bool spot = at_spot(c.told);
  say(spot ? "Begin" : "Put in", then.launch, now.launch);
  say(spot ? "End" : "Off by", then.off_by, now.off_by);
  if (then.stop_by && now.stop_by) return say("Too warm to fish from", *then.stop_by, *now.stop_by);
  if (now.stop_by) c.said.push_back("Too warm to fish from " + hour(*now.stop_by) + ": that was not in it.");
  if (then.stop_by) c.said.push_back("The heat stop at " + hour(*then.stop_by) + " is gone.");
}

void compare_river(Changes& c, const StretchHandedOut& then, const StretchHandedOut& now) {
  const UnitSystem units = c.told.units;
  if (then.flow && now.flow && std::abs(*now.flow / *then.flow - 1.0) > kSameFlow)
    c.said.push_back(
        fmt::format("Flow at first {}, not {}.", say_flow(*now.flow, units), flow_figure(*then.flow, units)));
  if (then.flow && !now.flow) c.said.push_back("The flow is not known any more.");
  if (then.water && now.water && std::abs(in_kelvins(*now.water - *then.water)) > in_kelvins(kSameWater))
    c.said.push_back(fmt::format("Water at first {}, not {}.", say_temperature(*now.water, units),
                                 temperature_figure(*then.water, units)));
}

bool same_rig(const RodHandedOut& a, const RodHandedOut& b) {
  return a.line == b.line && a.tip == b.tip && a.fly == b.fly && std::abs((a.shot - b.shot).si()) < kSameShot.si();
}

const RodHandedOut* on_rod(const std::vector<RodHandedOut>& rods, const std::string& rod) {
  const auto found = std::find_if(rods.begin(), rods.end(), [&](const RodHandedOut& r) { return r.rod == rod; });
  return found == rods.end() ? nullptr : &*found;
}

// "9 ft 6-wt", or the id where the tackle has changed since.
std::string say_rod(const Changes& c, const std::string& id) {
  const auto& rods = c.told.in.tackle.rods;
  const auto found = std::find_if(rods.begin(), rods.end(), [&](const Rod& rod) { return rod.id == id; });
  return found == rods.end() ? typed(id) : say(*found, c.told.units) + (found->mark.empty() ? "" : " [" + typed(found->mark) + "]");
}

// Now as it is rigged; the plan's own rigs are parallel to those handed out.
std::string say_rigged(const Changes& c, std::size_t i) {
  const Rig& rig = c.told.floated->rigged.at(i);
  return say_line(c.told.in.tackle, rig, c.told.units) + ", " + say_fly(c.told.in.tackle, rig);
}

void compare_rods(Changes& c, const StretchHandedOut& then, const StretchHandedOut& now) {
  for (std::size_t i = 0; i < now.rods.size(); ++i) {
    const RodHandedOut* was = on_rod(then.rods, now.rods[i].rod);
    if (was != nullptr && same_rig(*was, now.rods[i])) continue;
    c.said.push_back(fmt::format("{} {}: {}.", was == nullptr ? "TAKE" : "RIG ANEW", say_rod(c, now.rods[i].rod), say_rigged(c, i)));
  }
  for (const RodHandedOut& rod : then.rods)
    if (on_rod(now.rods, rod.rod) == nullptr) c.said.push_back("LEAVE " + say_rod(c, rod.rod) + ".");
}

// What only tells of the readings is said at the head of the page anyway.
bool of_the_water(CautionKind kind) {
  switch (kind) {
    case CautionKind::OldReading:
    case CautionKind::MissingGauge:
    case CautionKind::GuessedDepth:
    case CautionKind::UnknownFlow:
    case CautionKind::RulesOld:
    case CautionKind::ForecastDoubt:
      return false;
    default:
      return true;
  }
}

const CautionHandedOut* said_before(const Changes& c, const Caution& caution) {
  const auto found = std::find_if(c.before.cautions.begin(), c.before.cautions.end(), [&](const CautionHandedOut& b) {
    return b.kind == caution.kind && b.where == caution.where && b.about == caution.about;
  });
  return found == c.before.cautions.end() ? nullptr : &*found;
}

void compare_cautions(Changes& c, const std::vector<Caution>& now) {
  const CautionWords words{c.told.in.river, c.told.clock, c.told.units};
  for (const Caution& caution : now) {
    if (!of_the_water(caution.kind)) continue;
    const CautionHandedOut* before = said_before(c, caution);
    if (before == nullptr) {
      c.said.push_back("NEW: " + say(caution, words));
    } else if (before->at && caution.at && apart(*before->at, *caution.at)) {
      c.said.push_back(fmt::format("NOW {}, not {}: {}", c.told.clock.ten_minutes(*caution.at),
                                   c.told.clock.ten_minutes(*before->at), say(caution, words)));
    }
  }
}

// "the plan of 19:50 yesterday", as seen on the day on which this one is made.
std::string plan_before(const Told& told) {
  const Instant then = told.in.before->made_at;
  const auto ago = std::chrono::sys_days{told.clock.day(told.plan.made_at)} - std::chrono::sys_days{told.clock.day(then)};
  const std::string of = "the plan of " + told.clock.minute(then);
  if (ago.count() == 0) return of;
  return of + (ago.count() == 1 ? " yesterday" : " on " + short_day(told.clock.day(then)));
}

}  // namespace

void add_changed_since(Page& page, const Told& told) {
  if (!told.in.before) return;
  Changes c{told, *told.in.before, handed_out(told.plan, told.in.tackle, told.in.before->whose), {}};
  const bool same = same_stretch(c);
  if (same) {
    compare_hours(c, *c.before.stretch, *c.now.stretch);
    compare_rods(c, *c.before.stretch, *c.now.stretch);
    compare_river(c, *c.before.stretch, *c.now.stretch);
  }
  if (same || !c.before.stretch) {
    compare_cautions(c, told.plan.cautions);
    if (told.floated != nullptr) compare_cautions(c, with_first_heat_stop(told.floated->cautions));
  }
  if (c.said.empty()) c.said.push_back("Nothing since " + plan_before(told) + ".");
  else c.said.front() = "Since " + plan_before(told) + ": " + c.said.front();
  page.blocks.push_back(Lines{c.said, "CHANGED"});
}

}  // namespace floatwright
