#include <fmt/format.h>

#include <algorithm>
#include <variant>

#include "adapters/out/map/map_point.hpp"
#include "engine/river/names.hpp"
#include "engine/river/place_text.hpp"
#include "engine/wording/float_plan_parts.hpp"
#include "engine/wording/say_rig.hpp"
#include "engine/wording/say_technique.hpp"
#include "engine/wording/typed.hpp"
#include "engine/wording/units.hpp"

namespace floatwright {
namespace {

constexpr Length kTypedPlace = miles(0.1);  // places along a river are typed to a tenth of a mile

bool within(const PlannedReach& reach, RiverPlace place) { return place <= reach.from && place >= reach.to; }

bool on_the_float(const Told& told, RiverPlace place) {
  return told.floated != nullptr && place <= told.floated->from_place && place >= told.floated->to_place;
}

void add_rods_to_rig(MapPoint& point, const Told& told) {
  Page page;
  add_rods(page, told);
  for (const Block& block : page.blocks) {
    if (const auto* lines = std::get_if<Lines>(&block)) point.lines.insert(point.lines.end(), lines->lines.begin(), lines->lines.end());
    const auto* rods = std::get_if<Rods>(&block);
    if (rods == nullptr) continue;
    for (const RodLine& rod : rods->rods)
      point.lines.push_back(fmt::format("{}{}: {}", rod.letter, rod.mark.empty() ? "" : " (" + rod.mark + ")",
                                        fmt::join(rod.lines, "; ")));
    for (const std::string& item : rods->bag) point.lines.push_back("bag: " + item);
  }
}

MapPoint access_point(const Access& access, const Told& told) {
  MapPoint point{MapPointKind::Access, typed(access.id), typed(access.name), "", "", {}, {}, {}};
  if (access.at && on_earth(*access.at)) point.at = access.at;
  if (!access.kind.empty()) point.lines.push_back(capitalised(typed(access.kind)) + ".");
  if (access.closed) point.lines.push_back("CLOSED.");
  if (!access.trailer) point.lines.push_back("No trailer.");
  if (told.floated == nullptr || at_spot(told)) return point;
  if (access.id == told.floated->from) {
    point.part = "put in";
    point.lines.push_back("Put in at " + told.clock.ten_minutes(told.floated->launch) + ".");
    if (told.floated->flow_at_launch) point.lines.push_back("River " + say_flow(*told.floated->flow_at_launch, told.units) + ".");
    add_rods_to_rig(point, told);
  }
  if (access.id == told.floated->to) {
    point.part = "take out";
    point.lines.push_back("Off the water by " + told.clock.ten_minutes(told.floated->off_by) + ".");
  }
  return point;
}

std::string hazard_limits(const Hazard& hazard, UnitSystem units) {
  std::string words;
  if (hazard.above_flow) words += "Above " + say_flow(*hazard.above_flow, units) + ". ";
  if (hazard.least_flow) words += "Under " + say_flow(*hazard.least_flow, units) + ". ";
  if (hazard.must_portage) words += "Portage" + (hazard.portage_time ? ", " + say_duration(*hazard.portage_time) : std::string{}) + ". ";
  if (!words.empty()) words.pop_back();
  return words;
}

MapPoint hazard_point(const Hazard& hazard, const Told& told) {
  MapPoint point{MapPointKind::Hazard, "", typed(hazard.what), "", "", {}, {}, {}};
  if (!hazard.how.empty()) point.lines.push_back(typed(hazard.how));
  if (const auto limits = hazard_limits(hazard, told.units); !limits.empty()) point.lines.push_back(limits);
  return point;
}

std::string rig_line(const Told& told, const PlannedWater& water) {
  const std::string type = std::string(water.source == DepthSource::Guessed ? "guessed " : "") + std::string(word_for(water.type));
  if (!water.choice.best) return capitalised(type) + ": " + typed(water.choice.why_none);
  const ScoredRig& best = *water.choice.best;
  const auto rod = in_boat(told.rods, told.in.tackle, best.rig);
  return fmt::format("{}: {}{}, {}", capitalised(type), rod ? told.rods.rods[*rod].letter + ", " : "",
                     say(told.in.tackle, best, told.units), say(best.technique));
}

// The rigs of the reach that the spot lies in: the plan is made for reaches, at the hour the boat is there.
void add_rigs_of_the_reach(MapPoint& point, const Told& told, RiverPlace place) {
  for (const PlannedReach& reach : told.floated->reaches) {
    if (!within(reach, place)) continue;
    point.lines.push_back(fmt::format("{} {}-{}.", typed(reach.name), told.clock.ten_minutes(reach.arrive),
                                      told.clock.ten_minutes(reach.leave)));
    if (!is_fished(reach)) point.lines.push_back("NOT FISHED: " + typed(reach.closed_why + reach.kept_out));
    for (const PlannedWater& water : reach.waters)
      if (is_fished(reach)) point.lines.push_back(rig_line(told, water));
    if (!told.floated->spot) return;  // a float passes once; at a spot each of its hours is told
  }
}

MapPoint spot_point(const Spot& spot, const Told& told) {
  MapPoint point{MapPointKind::Spot, typed(spot.id), typed(spot.name.empty() ? spot.id : spot.name), "", "", {}, {}, {}};
  if (at_spot(told) && told.floated != nullptr && spot.id == told.floated->from) {
    point.part = "fished";
    add_rods_to_rig(point, told);
    add_rigs_of_the_reach(point, told, spot.place);
  } else if (!at_spot(told) && on_the_float(told, spot.place)) add_rigs_of_the_reach(point, told, spot.place);
  return point;
}

void place_roughly(MapPoint& point, const std::vector<Access>& known, RiverPlace place, const River& river) {
  point.placed = placed_between(known, place);
  if (!point.placed) {
    point.lines.push_back("Its place on the map is not known: no access with coordinates above and below it.");
    return;
  }
  point.at = point.placed->at;
  const std::string above = typed(point.placed->from), below = typed(point.placed->to);
  const std::string how = above == below ? "that of " + above + ", at the same place along the river"
                                         : "from the way along the river between " + above + " and " + below;
  point.lines.push_back(fmt::format("PLACE APPROXIMATE, {}: it may be up to {} away.", how,
                                    distance_text(river, point.placed->off_by_at_most + kTypedPlace)));
}

}  // namespace

std::vector<MapPoint> map_points(const DayPlan& plan, const DayInputs& in) {
  const Told told = floatwright::told(plan, in);
  const auto known = known_points(in.river);
  std::vector<MapPoint> all;
  const auto add = [&](MapPoint point, RiverPlace place, bool rough) {
    point.place = place_text(in.river, place);
    if (point.part.empty() && !at_spot(told) && on_the_float(told, place)) point.part = "on the float";
    if (rough) place_roughly(point, known, place, in.river);
    all.push_back(std::move(point));
  };
  for (const Access& access : in.river.accesses) add(access_point(access, told), access.place, false);
  for (const Hazard& hazard : in.river.hazards) add(hazard_point(hazard, told), hazard.place, true);
  for (const Spot& spot : in.river.spots) add(spot_point(spot, told), spot.place, true);
  return all;
}

std::string kind_word(MapPointKind kind) {
  switch (kind) {
    case MapPointKind::Access:
      return "access";
    case MapPointKind::Hazard:
      return "hazard";
    case MapPointKind::Spot:
      return "spot";
  }
  return "place";
}

std::string map_title(const DayPlan& plan, const DayInputs& in) {
  const Told told = floatwright::told(plan, in);
  const std::string river = typed(in.river.name);
  const std::string what = told.floated == nullptr ? "NO PLAN: " + river : river + ": " + say_range(told, *told.floated);
  return what + ", " + say_day(plan.day);
}

double map_degrees(double degrees) { return std::round(degrees * 1e6) / 1e6; }

}  // namespace floatwright
