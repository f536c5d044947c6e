#include "adapters/out/json/river_json.hpp"

#include <nlohmann/json.hpp>

#include "adapters/out/json/names.hpp"
#include "adapters/out/json/plan_values.hpp"
#include "engine/river/names.hpp"
#include "engine/water/bed_profile.hpp"
#include "engine/wording/say_river_state.hpp"
#include "engine/wording/say_source.hpp"

namespace floatwright {
namespace {

template <class T>
Json why_none(const Measured<T>& value) {
  return value.has_value() ? Json(nullptr) : Json(value.why_absent());
}

Json hour_json(JsonPlan& out, const BelievedReach& reach, const ReachHour& hour) {
  Json object = Json::object();
  put_instant(out, object, "at", hour.at);
  object["discharge_m3_s"] = band(out, hour.flow, "discharge_m3_s");
  object["water_temperature_c"] = band(out, hour.temperature, "water_temperature_c");
  object["mean_depth_m"] = band(out, hour.mean_depth, "mean_depth_m");
  object["mean_speed_m_s"] = band(out, hour.mean_speed, "mean_speed_m_s");
  object["waters"] = Json::array();
  for (std::size_t w = 0; w < reach.waters.size(); ++w)
    object["waters"].push_back({{"water", word_for(reach.waters[w].type)},
                                {"depth_m", band(out, hour.waters[w].depth, "depth_m")},
                                {"surface_speed_m_s", band(out, hour.waters[w].surface_speed, "surface_speed_m_s")}});
  return object;
}

Json mean_over_surface_json(Bed bed, const Measured<Band<Length>>& depth) {
  return depth ? Json(mean_over_surface(bed_profile(bed, depth->best), depth->best)) : Json(nullptr);
}

Json water_json(JsonPlan& out, Bed bed, const BelievedWater& water, const WaterHour& noon) {
  return {{"water", word_for(water.type)},
          {"source", word_for(water.source)},
          {"noted_at_m3_s", maybe(out, water.noted_at, "noted_at_m3_s")},
          {"far_from_note", water.far_from_note},
          {"mean_over_surface", mean_over_surface_json(bed, noon.depth)},
          {"logged", logged_json(out, water.depth_met, water.speed_met)},
          {"why_none", why_none(noon.depth)}};
}

Json reach_json(JsonPlan& out, const BelievedReach& reach) {
  const River& river = out.in.river;
  const UnitSystem units = out.in.settings.units;
  const ReachHour& noon = reach.hours[reach.hours.size() / 2];
  Json object{{"id", reach.id}, {"name", reach.name}};
  object["from_place_m"] = number(out, reach.from.si(), "from_place_m");
  object["to_place_m"] = number(out, reach.to.si(), "to_place_m");
  object["length_m"] = number(out, si(reach.from - reach.to), "length_m");
  object["bed"] = word_for(reach.bed);
  object["lake"] = reach.lake;
  object["side_channel"] = reach.side_channel.empty() ? Json(nullptr) : Json(reach.side_channel);
  object["discharge_from"] = say(reach.flow_source, river, units);
  object["water_temperature_from"] = say(reach.temperature_source, river, units);
  object["why_no_discharge"] = why_none(noon.flow);
  object["why_no_water_temperature"] = why_none(noon.temperature);
  object["channel_guessed"] = reach.channel_guessed;
  object["waters"] = Json::array();
  for (std::size_t w = 0; w < reach.waters.size(); ++w)
    object["waters"].push_back(water_json(out, reach.bed, reach.waters[w], noon.waters[w]));
  object["hours"] = Json::array();
  for (const ReachHour& hour : reach.hours) object["hours"].push_back(hour_json(out, reach, hour));
  return object;
}

Json gauge_json(JsonPlan& out, const GaugeOutlook& outlook) {
  const std::string dam = followed_dam(out.plan, out.in.river, outlook.gauge);
  const StateWords words{out.in.river,     out.clock, out.in.settings.units, out.clock.day(out.plan.made_at),
                         "the day planned", dam};
  Json object{{"gauge", outlook.gauge}, {"state", plan_names::of(outlook.state)}};
  object["method"] = plan_names::of(dam.empty() ? outlook.method : FlowMethod::Schedule);
  object["text"] = say(outlook, words);
  object["discharge_now_m3_s"] = maybe(out, outlook.now, "discharge_now_m3_s");
  return object;
}

}  // namespace

std::string river_json(const RiverOfDay& river, const DayInputs& in) {
  JsonPlan out{river.facts, in, LocalClock(river.facts.time_zone), {}};
  Json document = document_head(out, "river_of_day");
  document["gauges"] = Json::array();
  for (const GaugeOutlook& outlook : river.facts.outlooks) document["gauges"].push_back(gauge_json(out, outlook));
  document["reaches"] = Json::array();
  for (const BelievedReach& reach : river.reaches) document["reaches"].push_back(reach_json(out, reach));
  document["dam_changes"] = fronts_json(out);
  document["readings"] = readings_json(out);
  document["missing_gauges"] = river.facts.missing_gauges;
  document["notes"] = river.facts.notes;
  for (const std::string& doubt : out.doubts) document["notes"].push_back(doubt);
  return document_text(document);
}

}  // namespace floatwright
