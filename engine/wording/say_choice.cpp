#include "engine/wording/say_choice.hpp"

#include <fmt/format.h>

#include <cmath>

#include "engine/wording/say_rig.hpp"
#include "engine/wording/say_technique.hpp"
#include "engine/wording/typed.hpp"
#include "engine/wording/units.hpp"

namespace floatwright {
namespace {

Speed plain(SurfaceSpeed speed) { return Speed::from_si(speed.si()); }

std::string where_it_fishes(const PlannedWater& water, const ScoredRig& best, UnitSystem units) {
  std::string words = best.technique.method == Method::Dry
                          ? std::string("fishes the surface")
                          : "fishes " + say_length(best.fly_depth.best, units) + " down";
  if (water.depth) words += " in " + say_length(water.depth->best, units);
  if (water.surface_speed) words += " at " + say_speed(plain(water.surface_speed->best), units);
  return words;
}

// A rival may fish as long as the rig advised, or longer: its rod stays ashore, its tackle is less plain, or the boat's rods
// serve the day better otherwise. Which of these it was is not known here.
const char* standing(const ScoredRig& best, const ScoredRig& next) {
  if (std::round(next.seconds) > std::round(best.seconds)) return "more with";
  return next.seconds >= best.seconds - 0.5 ? "as good:" : "next best:";
}

// Seconds are compared inside a method only; another method is named by how it is fished.
std::string next_best(const ScoredRig& best, const ScoredRig& next, const Tackle& tackle, UnitSystem units,
                      const std::string& of_next) {
  const std::string line = say_line(tackle, next.rig, units) + of_next;
  if (next.technique.method == best.technique.method)
    return fmt::format("{} {}, {:.0f} seconds", standing(best, next), line, next.seconds);
  return fmt::format("another way: {}, {}", line, say(next.technique));
}

std::string holds_words(const FlowRange& holds, UnitSystem units) {
  if (holds.from && holds.to)
    return fmt::format("same line from {} to {}", rough_flow_figure(*holds.from, units),
                       say_rough_flow(*holds.to, units));
  if (holds.from) return "same line from " + say_rough_flow(*holds.from, units) + " up";
  if (holds.to) return "same line up to " + say_rough_flow(*holds.to, units);
  return "";
}

std::string change_words(const char* side, const LineChange& change, const Tackle& tackle, UnitSystem units) {
  return fmt::format("{} {}: {}", side, say_rough_flow(change.at, units), say_line(tackle, change.to.rig, units));
}

}  // namespace

std::string say_reason(const PlannedWater& water, const Tackle& tackle, UnitSystem units, const std::string& of_next) {
  const auto& best = water.choice.best;
  if (!best) return "";
  std::string words =
      where_it_fishes(water, *best, units) + fmt::format(", {:.0f} seconds of each minute in the zone", best->seconds);
  if (water.hatch && !water.hatch_name.empty()) words += "; hatch: " + typed(water.hatch_name);
  if (water.choice.runner_up) words += "; " + next_best(*best, *water.choice.runner_up, tackle, units, of_next);
  return words;
}

std::string say_change(const WaterChoice& choice, const Tackle& tackle, UnitSystem units) {
  if (!choice.changes_below && !choice.changes_above) return holds_words(choice.holds, units);
  std::string words;
  if (choice.changes_below) words = change_words("under", *choice.changes_below, tackle, units);
  if (choice.changes_above)
    words += (words.empty() ? "" : "; ") + change_words("over", *choice.changes_above, tackle, units);
  return words;
}

}  // namespace floatwright
