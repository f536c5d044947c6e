#include <fmt/format.h>

#include <algorithm>
#include <cmath>
#include <map>

#include "engine/wording/float_plan_parts.hpp"
#include "engine/wording/say_choice.hpp"
#include "engine/wording/say_river_state.hpp"
#include "engine/wording/typed.hpp"
#include "engine/wording/units.hpp"

namespace floatwright {
namespace {

constexpr std::size_t kMostPlaces = 3;

// "Its fishing hours are worth 3 % more than those of Mill Bridge to Old Ferry; 6 h 50 min of fishing."
std::string worth_words(const Told& told) {
  const PlannedStretch& s = *told.floated;
  const std::string why = without_stop(typed(s.why));
  if (!(s.fishing > Duration{})) return why.empty() ? "" : capitalised(why) + ".";
  std::string words = say_duration(s.fishing) + " of fishing";
  const double percent = std::floor(100.0 * (s.fished / s.fishing) + 0.5);
  if (percent < 1.0) words = "no line that fishes";
  if (percent >= 1.0 && percent < 100.0) words += fmt::format(", {:.0f} % of it with a line{} that fishes", percent, aboard(told));
  return capitalised(why.empty() ? words : why + "; " + words) + ".";
}

void add_once(std::vector<std::string>& places, const std::string& place) {
  if (std::find(places.begin(), places.end(), place) == places.end()) places.push_back(place);
}

std::vector<std::string> places_without_line(const PlannedStretch& s) {
  std::vector<std::string> places;
  for (const PlannedReach& reach : s.reaches)
    for (const PlannedWater& water : reach.waters)
      if (reach.closed_why.empty() && water.fishing > Duration{} && !water.choice.best) add_once(places, at_water(reach, water));
  return places;
}

std::string no_line_words(const PlannedStretch& s) {
  std::vector<std::string> places = places_without_line(s);
  if (places.empty()) return "";
  const std::size_t more = places.size() > kMostPlaces ? places.size() - kMostPlaces : 0;
  places.resize(places.size() - more);
  if (more > 0) places.push_back(fmt::format("{} more", more));
  return "No line that fishes " + joined(places) + ".";
}

std::string river_words(const Told& told) {
  const GaugeOutlook* outlook = main_outlook(told.plan);
  return outlook == nullptr ? "" : say(*outlook, state_words(told)) + ".";
}

// The reason of each rod's rig, where the rod is first fished, in the order of the rods.
std::vector<std::string> reasons(const Told& told) {
  std::map<std::size_t, std::string> by_rod;
  for (const PlannedReach& reach : told.floated->reaches) {
    for (const PlannedWater& water : reach.waters) {
      if (!reach.closed_why.empty() || !water.choice.best) continue;
      const auto rod = in_boat(told.rods, told.in.tackle, water.choice.best->rig);
      if (!rod) continue;
      by_rod.try_emplace(*rod, fmt::format("{} {}: {}.", told.rods.rods[*rod].letter, at_water(reach, water),
                                           reason(told, water)));
    }
  }
  std::vector<std::string> lines;
  for (auto& [rod, line] : by_rod) lines.push_back(std::move(line));
  return lines;
}

}  // namespace

std::string reason(const Told& told, const PlannedWater& water) {
  const auto& next = water.choice.runner_up;
  const bool ashore = next && !in_boat(told.rods, told.in.tackle, next->rig);
  return say_reason(water, told.in.tackle, told.units, ashore ? not_at_hand(told) : "");
}

StateWords state_words(const Told& told) {
  const std::string dam = followed_dam(told.plan, told.in.river, told.plan.main_gauge);
  return {told.in.river, told.clock, told.units, told.clock.day(told.plan.made_at), told.day_word, dam};
}

void add_why(Page& page, const Told& told) {
  std::vector<std::string> lines{worth_words(told), no_line_words(*told.floated), river_words(told)};
  std::erase(lines, "");
  for (std::string& reason : reasons(told)) lines.push_back(std::move(reason));
  if (!lines.empty()) page.blocks.push_back(Lines{std::move(lines), "WHY"});
}

}  // namespace floatwright
