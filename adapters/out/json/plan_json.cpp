#include "adapters/out/json/plan_json.hpp"

#include <nlohmann/json.hpp>

#include "adapters/out/json/names.hpp"
#include "adapters/out/json/plan_values.hpp"
#include "engine/readings/names.hpp"
#include "engine/trip/cautions_of_all.hpp"
#include "engine/wording/float_plan_parts.hpp"
#include "engine/wording/say_caution.hpp"
#include "engine/wording/say_river_state.hpp"

namespace floatwright {
namespace {

Json sun_json(JsonPlan& out) {
  if (!out.plan.sun_known) return nullptr;
  Json object = Json::object();
  put_instant(out, object, "rise", out.plan.sunrise);
  put_instant(out, object, "set", out.plan.sunset);
  return object;
}

Json hours_json(JsonPlan& out) {
  Json list = Json::array();
  for (const HourRow& hour : out.plan.hours) {
    Json object = Json::object();
    put_instant(out, object, "at", hour.at);
    object["discharge_m3_s"] = band(out, hour.flow, "discharge_m3_s");
    object["water_temperature_c"] = band(out, hour.temperature, "water_temperature_c");
    list.push_back(object);
  }
  return list;
}

// The day's cautions and those of the stretch to float, or where there is none of all: what a reader of the plan must
// not miss.
Json cautions_json(JsonPlan& out) {
  Json list = Json::array();
  for (const Caution& caution : out.plan.cautions) list.push_back(caution_json(out, caution));
  bool any = false;
  for (const PlannedStretch& stretch : out.plan.stretches) {
    if (stretch.verdict != Verdict::Recommended && !stretch.spot) continue;
    any = true;
    for (const Caution& caution : stretch.cautions) list.push_back(caution_json(out, caution));
  }
  if (any) return list;
  for (const Caution& caution : cautions_of_all(out.plan.stretches)) list.push_back(caution_json(out, caution));
  return list;
}

Json stretches_json(JsonPlan& out) {
  Json list = Json::array();
  for (const PlannedStretch& stretch : out.plan.stretches) list.push_back(stretch_json(out, stretch));
  return list;
}

}  // namespace

Json fronts_json(JsonPlan& out) {
  Json list = Json::array();
  for (const DamFront& front : out.plan.fronts) {
    const auto& dams = out.in.river.dams;
    Json object{{"dam", front.dam < dams.size() ? Json(dams[front.dam].id) : Json(nullptr)},
                {"where", front.place_name}};
    object["before_m3_s"] = number(out, si(front.before), "before_m3_s");
    object["after_m3_s"] = number(out, si(front.after), "after_m3_s");
    put_instant(out, object, "leaves", front.leaves);
    put_instant(out, object, "earliest", front.earliest);
    put_instant(out, object, "expected", front.expected);
    put_instant(out, object, "latest", front.latest);
    object["seen_at_gauge"] = front.seen_at_gauge;
    list.push_back(object);
  }
  return list;
}

Json river_state_json(JsonPlan& out) {
  const GaugeOutlook* outlook = main_outlook(out.plan);
  if (outlook == nullptr) return nullptr;
  const std::string dam = followed_dam(out.plan, out.in.river, outlook->gauge);
  const FlowMethod method = dam.empty() ? outlook->method : FlowMethod::Schedule;  // routed down, or its own
  Json object{{"gauge", outlook->gauge}, {"state", plan_names::of(outlook->state)}, {"method", plan_names::of(method)}};
  const StateWords words{out.in.river,      out.clock, out.in.settings.units, out.clock.day(out.plan.made_at),
                         "the day planned", dam};
  object["text"] = say(*outlook, words);
  object["discharge_now_m3_s"] = maybe(out, outlook->now, "discharge_now_m3_s");
  const bool read = outlook->now.has_value();
  put_instant(out, object, "read_at", read ? std::optional<Instant>(outlook->now_at) : std::nullopt);
  object["change_6h_ln"] = number(out, outlook->change_6h, "change_6h_ln");
  return object;
}

Json readings_json(JsonPlan& out) {
  Json list = Json::array();
  for (std::size_t i = 0; i < out.plan.readings.size() && i < out.plan.reading_gauges.size(); ++i) {
    const NewestReading& reading = out.plan.readings[i];
    const std::string& gauge = out.plan.reading_gauges[i];
    Json station = nullptr;
    for (const GaugeSite& site : out.in.river.gauges)
      if (site.id == gauge) station = site.station;
    Json object{{"gauge", gauge}, {"station", station}, {"quantity", word_for(reading.variable)}};
    object["value"] = reading.si ? number(out, *reading.si, "readings") : Json(nullptr);
    object["why_none"] = reading.si ? Json(nullptr) : Json(reading.si.why_absent());
    object["unit"] = si_unit_of(reading.variable);
    put_instant(out, object, "read_at", reading.time);
    object["age_s"] = (out.plan.made_at - reading.time).count();
    object["marks"] = Json::array();
    for (const Mark mark : reading.marks) object["marks"].push_back(word_for(mark));
    object["series"] = reading.series_id;
    object["source"] = reading.source;
    list.push_back(object);
  }
  return list;
}

Json caution_json(JsonPlan& out, const Caution& caution) {
  const CautionWords words{out.in.river, out.clock, out.in.settings.units};
  Json object{{"what", plan_names::of(caution.kind)}, {"where", caution.where}, {"about", caution.about}};
  Json when = nullptr;
  if (caution.from || caution.to || caution.at) {
    when = Json::object();
    put_instant(out, when, "from", caution.from);
    put_instant(out, when, "at", caution.at);
    put_instant(out, when, "to", caution.to);
  }
  object["when"] = when;
  object["text"] = say_what(caution, words);
  object["basis"] = caution.basis;
  return object;
}

Json document_head(JsonPlan& out, const char* kind) {
  Json document{{"schema_version", 1}, {"kind", kind}};
  put_instant(out, document, "made_at", out.plan.made_at);
  document["day"] = day_text(out.plan.day);
  document["time_zone"] = out.plan.time_zone;
  document["river"] = out.in.river.name;
  document["readings_are_old"] = out.plan.stale;
  document["no_reading_at_all"] = out.plan.nothing;
  return document;
}

Json plan_document(const DayPlan& plan, const DayInputs& in) {
  JsonPlan out{plan, in, LocalClock(plan.time_zone), {}};
  Json document = document_head(out, "float_plan");
  document["sun"] = sun_json(out);
  document["river_state"] = river_state_json(out);
  document["stretches"] = stretches_json(out);
  document["why_no_stretch"] = plan.why_no_stretch.empty() ? Json(nullptr) : Json(plan.why_no_stretch);
  document["hours"] = hours_json(out);
  document["dam_changes"] = fronts_json(out);
  document["readings"] = readings_json(out);
  document["missing_gauges"] = plan.missing_gauges;
  document["cautions"] = cautions_json(out);
  document["notes"] = plan.notes;
  for (const std::string& doubt : out.doubts) document["notes"].push_back(doubt);
  document["foot"] = kFoot;
  return document;
}

std::string document_text(const Json& document) {
  return document.dump(2, ' ', false, Json::error_handler_t::replace) + "\n";
}

std::string plan_json(const DayPlan& plan, const DayInputs& in) { return document_text(plan_document(plan, in)); }

}  // namespace floatwright
