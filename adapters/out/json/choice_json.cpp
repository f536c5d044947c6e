#include <nlohmann/json.hpp>

#include "adapters/out/json/names.hpp"
#include "adapters/out/json/plan_values.hpp"
#include "engine/river/names.hpp"
#include "engine/tackle/names.hpp"
#include "engine/wording/say_choice.hpp"
#include "engine/wording/say_rig.hpp"
#include "engine/wording/say_technique.hpp"

namespace floatwright {
namespace {

Json change_json(JsonPlan& out, const std::optional<LineChange>& change) {
  if (!change) return nullptr;
  return {{"at_flow_m3_s", number(out, si(change->at), "at_flow_m3_s")}, {"to", rig_json(out, change->to)}};
}

Json rigs_json(JsonPlan& out, const std::vector<ScoredRig>& rigs) {
  Json list = Json::array();
  for (const ScoredRig& rig : rigs) list.push_back(rig_json(out, rig));
  return list;
}

void put_technique(JsonPlan& out, Json& object, const Technique& technique) {
  const bool swing = technique.method == Method::Swing, strip = technique.method == Method::Strip;
  object["method"] = word_for(technique.method);
  object["technique"] = say_technique(technique);
  object["mending"] = swing ? Json(plan_names::of(technique.mending)) : Json(nullptr);
  object["count_s"] = strip ? number(out, si(technique.count), "count_s") : Json(nullptr);
  object["strip_m_s"] = strip ? number(out, si(technique.strip), "strip_m_s") : Json(nullptr);
  object["platform"] = word_for(technique.platform);
}

}  // namespace

Json rig_json(JsonPlan& out, const ScoredRig& scored) {
  const Tackle& tackle = out.in.tackle;
  const Line& line = tackle.lines.at(scored.rig.line);
  const SinkingPart part = sinking_part(tackle, scored.rig);
  Json object{{"rod", line.on_rod}, {"line", line.id}, {"line_kind", word_for(line.kind)}};
  object["tip"] = scored.rig.tip ? Json(tackle.tips.at(*scored.rig.tip).id) : Json(nullptr);
  object["tip_length_m"] = number(out, si(part.length), "tip_length_m");
  object["sink_rate_m_s"] = number(out, si(part.sink_rate), "sink_rate_m_s");
  object["leader_m"] = number(out, si(scored.leader), "leader_m");
  const bool indicator = scored.technique.method == Method::Indicator;
  object["indicator_to_fly_m"] =
      indicator ? number(out, si(scored.indicator_to_fly), "indicator_to_fly_m") : Json(nullptr);
  object["fly"] = tackle.flies.at(scored.rig.fly).id;
  object["shot_kg"] = number(out, si(scored.rig.shot), "shot_kg");
  put_technique(out, object, scored.technique);
  object["fly_depth_m"] = band(out, scored.fly_depth, "fly_depth_m");
  object["seconds_per_minute"] = number(out, scored.seconds, "seconds_per_minute");
  object["snag_per_cast"] = number(out, scored.snag_per_cast, "snag_per_cast");
  object["words"] = say(tackle, scored, out.in.settings.units);
  return object;
}

Json choice_json(JsonPlan& out, const PlannedWater& water) {
  const WaterChoice& choice = water.choice;
  if (!choice.best) return nullptr;
  Json object = rig_json(out, *choice.best);
  object["reason"] = say_reason(water, out.in.tackle, out.in.settings.units);
  object["runner_up"] = choice.runner_up ? rig_json(out, *choice.runner_up) : Json(nullptr);
  object["as_good"] = rigs_json(out, choice.as_good);
  object["by_method"] = rigs_json(out, choice.by_method);
  object["changes_at"] = {{"below", change_json(out, choice.changes_below)},
                          {"above", change_json(out, choice.changes_above)},
                          {"same_line_from_m3_s", maybe(out, choice.holds.from, "same_line_from_m3_s")},
                          {"same_line_to_m3_s", maybe(out, choice.holds.to, "same_line_to_m3_s")}};
  return object;
}

}  // namespace floatwright
