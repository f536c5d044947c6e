#include "adapters/out/map/plan_geojson.hpp"

#include <cmath>
#include <nlohmann/json.hpp>

#include "adapters/out/map/map_point.hpp"
#include "engine/wording/float_plan_parts.hpp"

namespace floatwright {
namespace {

using Json = nlohmann::ordered_json;

Json text_or_null(const std::string& text) { return text.empty() ? Json(nullptr) : Json(text); }

std::string in_lines(const std::vector<std::string>& lines) {
  std::string all;
  for (const std::string& line : lines) all += (all.empty() ? "" : "\n") + line;
  return all;
}

Json geometry(const MapPoint& point) {
  if (!point.at) return nullptr;
  return {{"type", "Point"},
          {"coordinates", Json::array({map_degrees(point.at->longitude_deg), map_degrees(point.at->latitude_deg)})}};
}

Json feature(const MapPoint& point) {
  Json properties{{"kind", kind_word(point.kind)}, {"id", text_or_null(point.id)}, {"name", point.name}};
  properties["place"] = point.place;
  properties["part"] = text_or_null(point.part);
  properties["approximate"] = point.placed.has_value();
  if (point.placed) properties["off_by_at_most_m"] = std::ceil(in_metres(point.placed->off_by_at_most) / 10.0) * 10.0;
  properties["description"] = in_lines(point.lines);
  return {{"type", "Feature"}, {"geometry", geometry(point)}, {"properties", std::move(properties)}};
}

}  // namespace

std::string plan_geojson(const std::vector<BoatDay>& boats) {
  Json document{{"type", "FeatureCollection"}, {"title", map_title(boats)}, {"note", kFoot}};
  document["features"] = Json::array();
  for (const MapPoint& point : map_points(boats)) document["features"].push_back(feature(point));
  return document.dump(2) + "\n";
}

std::string plan_geojson(const DayPlan& plan, const DayInputs& in) { return plan_geojson({BoatDay{in, plan}}); }

}  // namespace floatwright
