#pragma once
// What a map of the day shows: accesses, hazards and spots of the river file, each with its words; GeoJSON and GPX print
// the same points.
#include <optional>
#include <string>
#include <vector>

#include "adapters/out/map/placing.hpp"
#include "engine/plan_day.hpp"

namespace floatwright {

enum class MapPointKind { Access, Hazard, Spot };

struct MapPoint {
  MapPointKind kind = MapPointKind::Access;
  std::string id;                    // as typed; a hazard has none
  std::string name;
  std::string place;                 // "mile 40.2"
  std::string part;                  // "put in", "take out", "on the float"; empty: not met on this day's float
  std::optional<GeoPoint> at;        // none: it can't be placed
  std::optional<Placed> placed;      // how, where it isn't an access of its own
  std::vector<std::string> lines;    // what to know there
};

// All of the river, in the file's order: accesses, hazards, spots.
[[nodiscard]] std::vector<MapPoint> map_points(const DayPlan& plan, const DayInputs& in);
// Each point once; what is said of one boat only begins with its name.
[[nodiscard]] std::vector<MapPoint> map_points(const std::vector<BoatDay>& boats);

[[nodiscard]] std::string kind_word(MapPointKind kind);  // "access"
[[nodiscard]] std::string map_title(const DayPlan& plan, const DayInputs& in);
[[nodiscard]] std::string map_title(const std::vector<BoatDay>& boats);

// Six decimals of a degree, a tenth of a metre on the ground.
[[nodiscard]] double map_degrees(double degrees);

}  // namespace floatwright
