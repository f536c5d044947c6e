#include <nlohmann/json.hpp>

#include "adapters/out/json/names.hpp"
#include "adapters/out/json/plan_values.hpp"
#include "engine/river/names.hpp"
#include "engine/wording/say_limit.hpp"
#include "engine/wording/say_source.hpp"

namespace floatwright {
namespace {

template <class T>
Json why_unknown(const Measured<T>& value) {
  return value ? Json(nullptr) : Json(value.why_absent());
}

Json water_json(JsonPlan& out, const PlannedWater& water) {
  Json object{{"water", word_for(water.type)}, {"bed", word_for(water.bed)}};
  object["fishing_time"] = number(out, water.fishing_time, "fishing_time");
  object["fishing_s"] = number(out, si(water.fishing), "fishing_s");
  object["hatch"] = water.hatch ? Json(water.hatch_name) : Json(nullptr);
  object["depth_m"] = band(out, water.depth, "depth_m");
  object["surface_speed_m_s"] = band(out, water.surface_speed, "surface_speed_m_s");
  object["mean_speed_m_s"] = band(out, water.mean_speed, "mean_speed_m_s");
  object["why_unknown"] = why_unknown(water.depth);
  object["source"] = word_for(water.source);
  object["noted_at_m3_s"] = maybe(out, water.noted_at, "noted_at_m3_s");
  object["far_from_note"] = water.far_from_note;
  object["beyond_measured"] = water.beyond ? Json(say(*water.beyond, out.in.settings.units)) : Json(nullptr);
  object["logged"] = logged_json(out, water.depth_met, water.speed_met);
  object["choice"] = choice_json(out, water);
  object["why_none"] = water.choice.best ? Json(nullptr) : Json(water.choice.why_none);
  return object;
}

Json reach_json(JsonPlan& out, const PlannedReach& reach) {
  Json object{{"id", reach.id}, {"name", reach.name}};
  put_instant(out, object, "arrive", reach.arrive);
  put_instant(out, object, "leave", reach.leave);
  object["length_m"] = number(out, si(reach.from - reach.to), "length_m");
  object["discharge_m3_s"] = band(out, reach.discharge, "discharge_m3_s");
  object["why_flow_unknown"] = why_unknown(reach.discharge);
  object["flow_source"] = say(reach.flow_source, out.in.river, out.in.settings.units);
  object["water_temperature_c"] = band(out, reach.temperature, "water_temperature_c");
  object["why_temperature_unknown"] = why_unknown(reach.temperature);
  object["temperature_source"] = say(reach.temperature_source, out.in.river, out.in.settings.units);
  object["closed_why"] = reach.closed_why.empty() ? Json(nullptr) : Json(reach.closed_why);
  object["kept_out_why"] = reach.kept_out.empty() ? Json(nullptr) : Json(reach.kept_out);
  object["lunch"] = reach.lunch;
  object["portage_at_end"] = reach.portage_at_end;
  object["stop"] = reach.stop_sentence.empty() ? Json(nullptr) : Json(reach.stop_sentence);
  object["stop_s"] = maybe(out, reach.stop_time, "stop_s");
  object["waters"] = Json::array();
  for (const PlannedWater& water : reach.waters) object["waters"].push_back(water_json(out, water));
  return object;
}

Json carried_json(JsonPlan& out, const PlannedStretch& stretch, std::size_t place) {
  if (place >= stretch.rigged.size()) return nullptr;
  const Tackle& tackle = out.in.tackle;
  const Rig& rig = stretch.rigged[place];
  return {{"line", tackle.lines.at(rig.line).id},
          {"tip", rig.tip ? Json(tackle.tips.at(*rig.tip).id) : Json(nullptr)},
          {"fly", tackle.flies.at(rig.fly).id},
          {"shot_kg", number(out, si(rig.shot), "shot_kg")}};
}

Json rods_json(JsonPlan& out, const PlannedStretch& stretch) {
  Json list = Json::array();
  for (std::size_t i = 0; i < stretch.rods.rods.size(); ++i) {
    const Rod& rod = out.in.tackle.rods.at(stretch.rods.rods[i]);
    list.push_back({{"rod", rod.id}, {"mark", rod.mark}, {"at_launch", carried_json(out, stretch, i)}});
  }
  return list;
}

Json bag_json(JsonPlan& out, const PlannedStretch& stretch) {
  Json list = Json::array();
  for (const std::size_t line : stretch.rods.spares) list.push_back(out.in.tackle.lines.at(line).id);
  return list;
}

Json limit_json(JsonPlan& out, const PlannedStretch& stretch) {
  if (!stretch.limit) return nullptr;
  const BrokenLimit& limit = *stretch.limit;
  Json object{{"kind", plan_names::of(limit.kind)}, {"where", limit.where}};
  object["flow_m3_s"] = maybe(out, limit.flow, "flow_m3_s");
  object["flow_limit_m3_s"] = maybe(out, limit.flow_limit, "flow_limit_m3_s");
  object["length_m"] = maybe(out, limit.length, "length_m");
  object["length_limit_m"] = maybe(out, limit.length_limit, "length_limit_m");
  put_instant(out, object, "at", limit.at);
  put_instant(out, object, "at_limit", limit.at_limit);
  object["temperature_c"] = maybe(out, limit.temperature, "temperature_c");
  object["temperature_limit_c"] = maybe(out, limit.temperature_limit, "temperature_limit_c");
  return object;
}

std::string why_of(JsonPlan& out, const PlannedStretch& stretch) {
  if (stretch.verdict != Verdict::RuledOut) return stretch.why;
  return say_why_not(stretch, out.in.river, out.clock, out.in.settings.units);
}

}  // namespace

Json stretch_json(JsonPlan& out, const PlannedStretch& stretch) {
  Json object{
      {"from", stretch.from}, {"from_name", stretch.from_name}, {"to", stretch.to}, {"to_name", stretch.to_name}};
  object["spot"] = stretch.spot ? Json(word_for(*stretch.spot)) : Json(nullptr);
  object["verdict"] = plan_names::of(stretch.verdict);
  object["why"] = why_of(out, stretch);
  object["limit"] = limit_json(out, stretch);
  put_instant(out, object, "launch", stretch.launch);
  put_instant(out, object, "off_by", stretch.off_by);
  put_instant(out, object, "end", stretch.end);
  put_instant(out, object, "stop_fishing_by", stretch.stop_by);
  object["length_m"] = number(out, si(stretch.length), "length_m");
  object["on_water_s"] = number(out, si(stretch.on_water), "on_water_s");
  object["shuttle_s"] = si(stretch.shuttle) > 0.0 ? number(out, si(stretch.shuttle), "shuttle_s") : Json(nullptr);
  object["fishing_s"] = number(out, si(stretch.fishing), "fishing_s");
  object["fished_s"] = number(out, si(stretch.fished), "fished_s");
  object["flow_at_launch_m3_s"] = band(out, stretch.flow_at_launch, "flow_at_launch_m3_s");
  object["water_at_launch_c"] = band(out, stretch.water_at_launch, "water_at_launch_c");
  object["water_at_end_c"] = band(out, stretch.water_at_end, "water_at_end_c");
  object["rods"] = rods_json(out, stretch);
  object["bag"] = bag_json(out, stretch);
  object["changes"] = stretch.rods.changes;
  object["changing_s"] = number(out, si(stretch.rods.lost), "changing_s");
  object["reaches"] = Json::array();
  for (const PlannedReach& reach : stretch.reaches) object["reaches"].push_back(reach_json(out, reach));
  object["cautions"] = Json::array();
  for (const Caution& caution : stretch.cautions) object["cautions"].push_back(caution_json(out, caution));
  object["notes"] = stretch.notes;
  return object;
}

}  // namespace floatwright
