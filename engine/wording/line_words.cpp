#include "engine/wording/line_words.hpp"

#include <fmt/format.h>

#include <algorithm>

#include "engine/wording/say_rig.hpp"
#include "engine/wording/typed.hpp"
#include "engine/wording/units.hpp"

namespace floatwright {
namespace {

std::string rod_and_place(const Told& told) {
  const LineOfTheDay& drawn = *told.floated->line;
  const PlannedReach& reach = told.floated->reaches.at(drawn.reach);
  const auto rod = in_boat(told.rods, told.in.tackle, drawn.line.rig.rig);
  const std::string place = at_water(reach, reach.waters.at(drawn.water));
  return rod ? "Rod " + told.rods.rods[*rod].letter + " " + place : capitalised(place);
}

// The line with a place on this float; a float cut short for a page may have lost it.
const LineOfTheDay* drawn_line(const Told& told) {
  if (told.floated == nullptr || !told.floated->line) return nullptr;
  const LineOfTheDay& drawn = *told.floated->line;
  const auto& reaches = told.floated->reaches;
  const bool has_place = drawn.reach < reaches.size() && drawn.water < reaches[drawn.reach].waters.size();
  return has_place && !drawn.line.shape.points.empty() ? &drawn : nullptr;
}

Length fly_depth(const LineOverBed& line) { return std::min(line.shape.points.back().depth, line.water); }

}  // namespace

std::vector<std::string> line_picture_heading(const Told& told) {
  return {rod_and_place(told) + ", true slope", "Hatched: where the fish take."};
}

std::optional<Figure> line_figure(const Told& told) {
  const LineOfTheDay* drawn = drawn_line(told);
  if (drawn == nullptr) return std::nullopt;
  const LineOverBed& line = drawn->line;
  return Figure{"line", fmt::format("The line over the bed at true slope. {}: water {}, fly at {}.", rod_and_place(told),
                                    say_length(line.water, told.units), say_length(fly_depth(line), told.units))};
}

}  // namespace floatwright
