#include <fmt/format.h>

#include <algorithm>

#include "adapters/out/map/map_point.hpp"
#include "engine/wording/clock.hpp"
#include "engine/wording/typed.hpp"

namespace floatwright {
namespace {

bool says(const MapPoint& point, const std::string& line) {
  return std::find(point.lines.begin(), point.lines.end(), line) != point.lines.end();
}

bool all_say(const std::vector<const MapPoint*>& points, const std::string& line) {
  return std::all_of(points.begin(), points.end(), [&](const MapPoint* p) { return says(*p, line); });
}

// One place as each boat's map has it.
MapPoint merged(const std::vector<const MapPoint*>& points, const std::vector<BoatDay>& boats) {
  MapPoint point = *points.front();
  if (points.size() == 1) return point;
  point.part.clear();
  std::erase_if(point.lines, [&](const std::string& line) { return !all_say(points, line); });
  for (std::size_t i = 0; i < points.size(); ++i) {
    const std::string boat = typed(boats[i].in.settings.boat_of_several);
    if (!points[i]->part.empty())
      point.part += fmt::format("{}{}: {}", point.part.empty() ? "" : "; ", boat, points[i]->part);
    for (const std::string& line : points[i]->lines)
      if (!all_say(points, line)) point.lines.push_back(boat + ": " + line);
  }
  return point;
}

}  // namespace

std::vector<MapPoint> map_points(const std::vector<BoatDay>& boats) {
  std::vector<std::vector<MapPoint>> maps;  // of one river: the same places in the same order
  for (const BoatDay& boat : boats) maps.push_back(map_points(boat.plan, boat.in));
  std::vector<MapPoint> all;
  for (std::size_t place = 0; place < maps.front().size(); ++place) {
    std::vector<const MapPoint*> points;
    for (const auto& map : maps) points.push_back(&map[place]);
    all.push_back(merged(points, boats));
  }
  return all;
}

std::string map_title(const std::vector<BoatDay>& boats) {
  const BoatDay& first = boats.front();
  if (boats.size() == 1) return map_title(first.plan, first.in);
  return fmt::format("{}: {} boats, {}", typed(first.in.river.name), boats.size(), say_day(first.plan.day));
}

}  // namespace floatwright
