#include "adapters/out/map/river_geojson.hpp"

#include <nlohmann/json.hpp>
#include <optional>
#include <vector>

#include "adapters/out/map/map_point.hpp"
#include "engine/river/place_text.hpp"
#include "engine/wording/river_page.hpp"
#include "engine/wording/typed.hpp"

namespace floatwright {
namespace {

using Json = nlohmann::ordered_json;

Json position(const GeoPoint& at) { return Json::array({map_degrees(at.longitude_deg), map_degrees(at.latitude_deg)}); }

// Its two ends and the accesses between; none where an end lies outside the known points.
Json reach_line(const std::vector<Access>& known, const BelievedReach& reach) {
  const auto from = placed_between(known, reach.from), to = placed_between(known, reach.to);
  if (!from || !to) return nullptr;
  Json line = Json::array({position(from->at)});
  for (auto access = known.rbegin(); access != known.rend(); ++access)
    if (access->place < reach.from && access->place > reach.to) line.push_back(position(*access->at));
  line.push_back(position(to->at));
  return {{"type", "LineString"}, {"coordinates", line}};
}

template <class T, class Number>
Json best(const Measured<Band<T>>& band, const Number& number) {
  return band ? Json{{"low", number(band->low)}, {"best", number(band->best)}, {"high", number(band->high)}} : Json(nullptr);
}

Json hours(const BelievedReach& reach, const LocalClock& clock) {
  Json rows = Json::array();
  for (const ReachHour& hour : reach.hours)
    rows.push_back({{"at", clock.written(hour.at)},
                    {"discharge_m3_s", best(hour.flow, [](Discharge q) { return in_cubic_metres_per_second(q); })},
                    {"water_temperature_c", best(hour.temperature, [](Temperature t) { return in_celsius(t); })},
                    {"mean_depth_m", best(hour.mean_depth, [](Length d) { return in_metres(d); })},
                    {"mean_speed_m_s", best(hour.mean_speed, [](MeanSpeed v) { return v.si(); })}});
  return rows;
}

Json reach_feature(const Told& told, const std::vector<Access>& known, const BelievedReach& reach) {
  Json properties{{"kind", "reach"}, {"id", reach.id}, {"name", name_of(reach)}};
  properties["place"] = place_text(told.in.river, reach.from) + "-" + place_number(told.in.river, reach.to);
  properties["approximate"] = true;
  Page page;
  add_believed_reach(page, told, reach);
  std::string description;
  for (const Block& block : page.blocks)
    if (const auto* lines = std::get_if<Lines>(&block))
      for (const std::string& line : lines->lines) description += (description.empty() ? "" : "\n") + line;
  properties["description"] = description;
  properties["hours"] = hours(reach, told.clock);
  return {{"type", "Feature"}, {"geometry", reach_line(known, reach)}, {"properties", std::move(properties)}};
}

struct Marked {
  const char* kind;
  std::string id, name;
  std::optional<RiverPlace> place;
  std::optional<GeoPoint> at = {};  // where it has coordinates of its own
};

std::vector<Marked> marked(const River& river) {
  std::vector<Marked> all;
  for (const GaugeSite& gauge : river.gauges) all.push_back({"gauge", gauge.id, gauge.name, gauge.place});
  for (const Access& access : river.accesses) all.push_back({"access", access.id, access.name, access.place, access.at});
  for (const Dam& dam : river.dams) all.push_back({"dam", dam.id, dam.name, dam.place});
  for (const Tributary& tributary : river.tributaries)
    all.push_back({"tributary", tributary.id, tributary.name, tributary.joins_at});
  for (const Hazard& hazard : river.hazards) all.push_back({"hazard", "", hazard.what, hazard.place});
  return all;
}

Json point_feature(const Told& told, const std::vector<Access>& known, const Marked& mark) {
  const bool own = mark.at && on_earth(*mark.at);
  const auto placed = own || !mark.place ? std::nullopt : placed_between(known, *mark.place);
  Json geometry = nullptr;
  if (own || placed) geometry = {{"type", "Point"}, {"coordinates", position(own ? *mark.at : placed->at)}};
  Json properties{{"kind", mark.kind}, {"id", mark.id.empty() ? Json(nullptr) : Json(typed(mark.id))}, {"name", typed(mark.name)}};
  properties["place"] = mark.place ? Json(place_text(told.in.river, *mark.place)) : Json(nullptr);
  properties["approximate"] = !own;
  for (const GaugeOutlook& outlook : told.plan.outlooks)
    if (mark.kind == std::string_view{"gauge"} && outlook.gauge == mark.id)
      properties["discharge_now_m3_s"] = outlook.now ? Json(in_cubic_metres_per_second(*outlook.now)) : Json(nullptr);
  return {{"type", "Feature"}, {"geometry", geometry}, {"properties", std::move(properties)}};
}

}  // namespace

std::string river_geojson(const RiverOfDay& river, const DayInputs& in) {
  const Told words = told(river.facts, in);
  const auto known = known_points(in.river);
  Json document{{"type", "FeatureCollection"}, {"title", typed(in.river.name) + ", " + say_day(in.day)}, {"note", kFoot}};
  document["features"] = Json::array();
  for (const Marked& mark : marked(in.river)) document["features"].push_back(point_feature(words, known, mark));
  for (const BelievedReach& reach : river.reaches) document["features"].push_back(reach_feature(words, known, reach));
  return document.dump(2, ' ', false, Json::error_handler_t::replace) + "\n";
}

}  // namespace floatwright
