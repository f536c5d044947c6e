#include <fmt/format.h>

#include <algorithm>

#include "engine/wording/float_plan_parts.hpp"
#include "engine/wording/say_rig.hpp"
#include "engine/wording/say_technique.hpp"
#include "engine/wording/typed.hpp"
#include "engine/wording/units.hpp"

namespace floatwright {
namespace {

const PlannedReach* first_fished(const Told& told) {
  const PlannedReach* first = nullptr;
  for (const RodInBoat& rod : told.rods.rods)
    if (rod.first_reach != nullptr && (first == nullptr || rod.first_reach->arrive < first->arrive))
      first = rod.first_reach;
  return first;
}

std::string brief_leader(const Told& told, const ScoredRig& rig) {
  if (rig.technique.method != Method::Indicator) return say_leader(told.in.tackle, rig, told.units);
  return fmt::format("indicator: {} to fly", say_length(rig.indicator_to_fly, told.units));
}

// The whole rig in two lines: what hangs on the line in one of them.
std::vector<std::string> brief_rod_lines(const Told& told, const RodInBoat& rod) {
  const Tackle& tackle = told.in.tackle;
  const std::string name = say(tackle.rods.at(rod.rod), told.units);
  if (!rod.at_launch) return {name + "  as you like it"};
  const std::string line = name + "  " + say_line(tackle, *rod.at_launch, told.units);
  const std::string fly = say_fly(tackle, *rod.at_launch);
  if (!rod.as_fished) return {line, fly + "; kept ready"};
  return {line, brief_leader(told, *rod.as_fished) + ", " + fly};
}

std::vector<std::string> rod_lines(const Told& told, const RodInBoat& rod) {
  const Tackle& tackle = told.in.tackle;
  const std::string name = say(tackle.rods.at(rod.rod), told.units);
  if (!rod.at_launch) return {name + "  as you like it: no line of this rod is in the plan"};
  const std::string line = name + "  " + say_line(tackle, *rod.at_launch, told.units);
  const std::string fly = say_fly(tackle, *rod.at_launch);
  if (!rod.as_fished) return {line, fly + "; kept ready, not in the table below"};
  const std::string leader = say_leader(tackle, *rod.as_fished, told.units);
  const bool leader_alone = rod.as_fished->technique.method == Method::Indicator;  // it says depth and weight already
  std::vector<std::string> lines{line};
  if (leader_alone) lines.push_back(leader);
  lines.push_back(leader_alone ? fly : leader + ", " + fly);
  if (rod.first_reach != nullptr && rod.first_reach != first_fished(told))
    lines.push_back(
        fmt::format("first used {}, {}", told.clock.ten_minutes(rod.first_reach->arrive), name_of(*rod.first_reach)));
  return lines;
}

// Which mark is drawn: shapes while they tell the rods apart.
std::string mark_of(const Told& told, const RodInBoat& rod) {
  return told.rods.marks_tell ? typed(told.in.tackle.rods.at(rod.rod).mark) : "";
}

void add_once(std::vector<std::string>& bag, std::vector<std::string>& seen, const std::string& item,
              const std::string& use) {
  if (std::find(seen.begin(), seen.end(), item) != seen.end()) return;
  seen.push_back(item);
  bag.push_back(use.empty() ? item : item + ": " + use);
}

// What the day's changes need, where they are not told beside it (brief), then what another flow would.
void pack(const Told& told, bool brief, Rods& rods) {
  constexpr std::size_t kKeptForTheFlow = 2;
  const Tackle& tackle = told.in.tackle;
  std::vector<std::string> items, seen;
  for (const RodInBoat& rod : told.rods.rods)
    if (rod.at_launch) seen.push_back(say_line(tackle, *rod.at_launch, told.units));
  for (const RigChange& change : told.rods.changes) {
    const std::string line = say_line(tackle, change.to.rig, told.units);
    if (brief) seen.push_back(line);
    add_once(items, seen, line, fmt::format("goes on {} {}", told.rods.rods[change.in_boat].letter, at_reach(*change.reach)));
  }
  rods.bag_kept = items.size() + kKeptForTheFlow;
  for (const TakesOver& change : lines_that_take_over(told)) {
    const auto rod = in_boat(told.rods, tackle, change.to.rig);
    if (!change.likely || !rod) continue;
    add_once(items, seen, say_line(tackle, change.to.rig, told.units),
             fmt::format("goes on {} {} {}", told.rods.rods[*rod].letter, change.under ? "under" : "over",
                         say_rough_flow(change.at, told.units)));
  }
  for (const std::size_t line : told.floated->rods.spares)
    add_once(items, seen, say_line(tackle, Rig{line, std::nullopt, 0, Mass{}}, told.units), "");
  rods.bag = std::move(items);
}

// "fly to heavy nymph size 8", "shot to 0.4 g", "shot off"; none where the line is another.
std::optional<std::string> change_at_the_end(const Tackle& tackle, const RigChange& change) {
  const Rig &before = change.before, &after = change.to.rig;
  if (before.line != after.line || before.tip != after.tip) return std::nullopt;
  if (before.fly != after.fly) return "fly to " + say_fly(tackle, after);
  return after.shot > Mass{} ? "shot to " + say_mass(after.shot) : "shot off";
}

// "to sinking tip 10 ft 4 in/s, leader 3 1/2 ft, weighted streamer"; only the fly or its shot where only that changes.
std::string change_words(const Told& told, const RigChange& change) {
  const Tackle& tackle = told.in.tackle;
  const auto at_the_end = change_at_the_end(tackle, change);
  if (at_the_end) return *at_the_end + ", " + say_leader(tackle, change.to, told.units);
  return "to " + say(tackle, change.to, told.units);
}

// "08:40 A shot off, indicator: 7 ft to fly."; the place stands in the table.
std::vector<std::string> brief_change_lines(const Told& told) {
  const Tackle& tackle = told.in.tackle;
  std::vector<std::string> lines;
  for (const RigChange& change : told.rods.changes) {
    const std::string all = fmt::format("to {}, {}", say_line(tackle, change.to.rig, told.units), say_fly(tackle, change.to.rig));
    lines.push_back(fmt::format("{} {} {}, {}.", told.clock.ten_minutes(change.at), told.rods.rods[change.in_boat].letter,
                                change_at_the_end(tackle, change).value_or(all), brief_leader(told, change.to)));
  }
  return lines;
}

// Of anglers who cast unequally far: whose cast the lines are chosen for.
std::string say_casts(const Told& told) {
  const auto& anglers = told.in.settings.preferences.anglers;
  const auto [shortest, longest] = std::ranges::minmax_element(anglers, {}, &Angler::cast);
  if (anglers.empty() || shortest->cast == longest->cast) return "";
  std::vector<std::string> others;
  for (const Angler& angler : anglers)
    if (&angler != &*shortest) others.push_back(fmt::format("{} {}", angler.name.empty() ? "another" : typed(angler.name),
                                                            say_length(angler.cast, told.units)));
  return fmt::format("Chosen for the shortest cast, {} of {}; {}.", say_length(shortest->cast, told.units),
                     shortest->name.empty() ? "one" : typed(shortest->name), joined(others));
}

// A boat that got fewer rods of the pool than it asked for; empty where there is no pool, or it got all.
std::string say_rods_short(const Told& told) {
  const Preferences& asked = told.in.settings.preferences;
  const std::size_t got = told.rods.rods.size(), wanted = static_cast<std::size_t>(std::max(0, asked.rods_aboard));
  if (asked.rods_elsewhere.empty() || got >= wanted) return "";
  if (got == 0) return "No rod is left in the pool that fishes here: this boat has none.";
  return fmt::format("{} of the {} rods asked for: no other left in the pool would bring more.", got, wanted);
}

}  // namespace

void add_rods(Page& page, const Told& told, bool brief) {
  Rods rods{at_spot(told) ? "RIG THESE" : "RIG THESE BEFORE YOU LAUNCH", {}, {}};
  pack(told, brief, rods);
  for (const RodInBoat& rod : told.rods.rods)
    rods.rods.push_back({mark_of(told, rod), rod.letter, brief ? brief_rod_lines(told, rod) : rod_lines(told, rod)});
  const std::string few = say_rods_short(told);
  if (rods.rods.empty() && !few.empty()) {
    page.blocks.push_back(Lines{{few}, "RIG"});
    return;
  }
  if (rods.rods.empty()) {
    page.blocks.push_back(Lines{{fmt::format("No line{} reaches the fish {}: no rod is named.", aboard(told),
                                             at_spot(told) ? "here" : "on this float")},
                                "RIG"});
    return;
  }
  page.blocks.push_back(std::move(rods));
  if (brief && !told.rods.changes.empty()) page.blocks.push_back(Lines{brief_change_lines(told), "CHANGE"});
  if (!few.empty()) page.blocks.push_back(Lines{{few}, "POOL"});
}

std::vector<std::string> rig_change_lines(const Told& told) {
  std::vector<std::string> lines;
  for (const RigChange& change : told.rods.changes)
    lines.push_back(fmt::format("{} {}: {} {}.", told.clock.ten_minutes(change.at), name_of(*change.reach),
                                told.rods.rods[change.in_boat].letter, change_words(told, change)));
  return lines;
}

void add_changes(Page& page, const Told& told) {
  if (told.rods.rods.empty()) return;
  std::vector<std::string> lines = rig_change_lines(told);
  if (lines.empty()) lines.push_back("No change of line or fly all day.");
  if (std::string casts = say_casts(told); !casts.empty()) lines.push_back(std::move(casts));
  page.blocks.push_back(Lines{lines, "RODS"});
}

}  // namespace floatwright
