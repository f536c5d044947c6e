#include "engine/wording/say_learned.hpp"

#include <fmt/format.h>

#include <cmath>
#include <set>

#include "engine/river/names.hpp"
#include "engine/wording/typed.hpp"
#include "engine/wording/units.hpp"

namespace floatwright {
namespace {

std::string counted(int entries, const char* one, const char* many) {
  return fmt::format("({} {})", entries, entries == 1 ? one : many);
}

// A tenth of a foot or of a foot a second; a hundredth of a metre or of a metre a second.
struct Difference {
  std::string figure;  // without a sign
  bool none = false;   // rounds to nothing
};
Difference difference(double si, UnitSystem units) {
  const bool us = units == UnitSystem::Us;
  const double value = us ? in_feet(metres(std::abs(si))) : std::abs(si);
  return {fmt::format("{:.{}f}", value, us ? 1 : 2), value < (us ? 0.05 : 0.005)};
}

// How much of what is now was not noted.
double added(double now, const Correction& met) { return now * (1.0 - std::exp(-met.ln)); }

std::string joined_parts(const std::string& depth, const std::string& speed) {
  return depth + (depth.empty() || speed.empty() ? "" : "; ") + speed;
}

// The kind where the place has several waters.
std::string water_of(const std::string& place, WaterType kind, std::size_t waters) {
  const std::string name = capitalised(typed(place));
  return waters == 1 ? name : name + " " + std::string(word_for(kind));
}

std::string depth_now(Length depth, UnitSystem units) {
  return units == UnitSystem::Us ? fmt::format("{:.1f} ft", in_feet(depth)) : fmt::format("{:.2f} m", in_metres(depth));
}

}  // namespace

std::string say_deeper(const Correction& depth, Length now, UnitSystem units) {
  if (depth.entries == 0) return "";
  const double more = added(now.si(), depth);
  const Difference by = difference(more, units);
  const std::string entries = counted(depth.entries, "entry", "entries");
  if (by.none) return "as deep as noted " + entries;
  return fmt::format("{} {} {} than noted {}", by.figure, length_unit(units), more > 0.0 ? "deeper" : "shallower", entries);
}

std::string say_faster(const Correction& speed, SurfaceSpeed now, UnitSystem units) {
  if (speed.entries == 0) return "";
  const double more = added(now.si(), speed);
  const Difference by = difference(more, units);
  const std::string entries = counted(speed.entries, "entry", "entries");
  if (by.none) return "as fast as noted " + entries;
  return fmt::format("{} {} {} than noted {}", by.figure, speed_unit(units), more > 0.0 ? "faster" : "slower", entries);
}

std::string say(const LearnedWater& water, const River& river, UnitSystem units) {
  const Length depth = std::exp(water.depth.ln) * water.noted_depth;
  const SurfaceSpeed speed = std::exp(water.speed.ln) * water.noted_speed;
  std::string words = joined_parts(say_deeper(water.depth, depth, units), say_faster(water.speed, speed, units));
  if (water.depth.entries > 0) words += fmt::format(", {} at {}", depth_now(depth, units), say_flow(water.noted_at, units));
  return water_of(water.where.name, water.type, waters_of(river, water.where.holder, water.where.of).size()) + ": " + words + ".";
}

std::string say(const LearnedPace& pace) {
  const double percent = 100.0 * (std::exp(pace.pace.ln) - 1.0);
  const std::string floats = counted(pace.pace.entries, "float", "floats");
  const std::string boat = pace.boat.empty() ? "The boat" : capitalised(typed(pace.boat));
  if (std::abs(percent) < 0.5) return fmt::format("{}: floats as fast as noted {}.", boat, floats);
  return fmt::format("{}: floats {:.0f} % {} than noted {}.", boat, std::abs(percent), percent > 0.0 ? "faster" : "slower",
                     floats);
}

std::vector<std::string> say_what_was_met(const std::vector<PlannedReach>& reaches, UnitSystem units) {
  std::vector<std::string> sentences;
  std::set<std::pair<std::string, WaterType>> told;
  for (const PlannedReach& reach : reaches)
    for (const PlannedWater& water : reach.waters) {
      if (!water.depth || !water.surface_speed || !told.emplace(reach.name, water.type).second) continue;
      const std::string words = joined_parts(say_deeper(water.depth_met, water.depth->best, units),
                                             say_faster(water.speed_met, water.surface_speed->best, units));
      if (!words.empty()) sentences.push_back(water_of(reach.name, water.type, reach.waters.size()) + ": " + words + ".");
    }
  return sentences;
}

}  // namespace floatwright
