// Surveyed sections that hold no water, or that no formula can be asked of.
#include <algorithm>

#include "engine/river/problem_groups.hpp"

namespace floatwright {
namespace {

constexpr std::size_t kLeastPoints = 3;
constexpr double kSteepStreams = 0.002, kSteepestKnown = 0.04;  // slopes on which roughness by slope was found

void shape_problems(const SurveyedSection& section, const std::string& pointer, Problems& all) {
  const auto& points = section.points;
  const std::string allowed = "three points or more from bank to bank, the lowest between the banks";
  if (points.size() < kLeastPoints) {
    all.push_back(river_error(pointer + "/points",
                              points.size() == 1 ? "1 point" : std::to_string(points.size()) + " points", allowed,
                              "Survey the section from bank to bank, or leave it out."));
    return;
  }
  const auto back = std::ranges::adjacent_find(points, std::ranges::greater{}, &SectionPoint::across);
  if (back != points.end()) {
    all.push_back(river_error(pointer + "/points/" + std::to_string(back - points.begin() + 1),
                              "a point nearer than the one before it", "points in order across the river",
                              "Type the points in the order of the tape."));
    return;
  }
  const auto low = std::ranges::min(points, {}, &SectionPoint::height);
  const auto is_bank = [low](const SectionPoint& end) { return end.height > low.height; };
  if (!is_bank(points.front()) || !is_bank(points.back())) {
    all.push_back(river_error(pointer + "/points", "no bank on one side: the lowest ground is at the end", allowed,
                              "Go on to the top of both banks. A depth below a level is a height with a minus."));
  }
}

void slope_problems(const SurveyedSection& section, const NamedReach& reach, const std::string& pointer,
                    Problems& all) {
  const auto slope = section.slope ? section.slope : reach.slope;
  if (!slope || !(*slope > 0.0)) {
    all.push_back(river_error(pointer, "no slope over 0", "the fall over the length, of the section or its reach",
                              "Add \"slope\": 10 ft in a mile is 0.0019."));
  } else if (!section.roughness && (*slope < kSteepStreams || *slope > kSteepestKnown)) {
    all.push_back(river_warning(pointer, "no roughness at a slope of " + short_number(*slope),
                                "0.002 to 0.04, where roughness by slope was found",
                                "Add \"roughness\" (Manning's n); without it that of the nearest of these slopes is taken."));
  }
}

}  // namespace

Problems section_problems(const River& river) {
  Problems all;
  for (std::size_t i = 0; i < river.reaches.size(); ++i) {
    const auto& sections = river.reaches[i].sections;
    for (std::size_t j = 0; j < sections.size(); ++j) {
      const std::string pointer = pointer_to("reaches", i, pointer_to("channel/sections", j));
      shape_problems(sections[j], pointer, all);
      slope_problems(sections[j], river.reaches[i], pointer, all);
    }
  }
  return all;
}

}  // namespace floatwright
