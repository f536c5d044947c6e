#include "adapters/out/json/sink_json.hpp"

#include <cmath>
#include <nlohmann/json.hpp>

#include "adapters/out/json/names.hpp"
#include "adapters/out/json/plan_values.hpp"
#include "engine/river/names.hpp"
#include "engine/tackle/names.hpp"
#include "engine/units/words.hpp"
#include "engine/wording/say_rig.hpp"
#include "engine/wording/sink_doubts.hpp"

namespace floatwright {
namespace {

constexpr WordTable<Finding, 5> kFindings{{{Finding::Fishes, "fishes"},
                                           {Finding::TooHigh, "does_not_reach"},
                                           {Finding::OnTheBed, "on_the_bed"},
                                           {Finding::TooFast, "too_fast"},
                                           {Finding::NoFish, "no_fish"}}};

constexpr WordTable<Retrieve, 3> kRetrieves{
    {{Retrieve::Sinking, "sinking"}, {Retrieve::Level, "level"}, {Retrieve::Rising, "rising"}}};

Json finite(double value) { return std::isfinite(value) ? Json(value) : Json(nullptr); }
template <class Q>
Json finite(Q value) {
  return finite(value.si());
}
Json maybe(const Measured<double>& value) { return value ? finite(*value) : Json(nullptr); }
Json depth_band(const Band<Length>& b) {
  return {{"low", finite(b.low)}, {"best", finite(b.best)}, {"high", finite(b.high)}};
}

Json head(const char* kind) { return {{"schema_version", 1}, {"kind", kind}}; }

void put_tackle(Json& object, const Tackle& tackle, const Rig& rig) {
  const SinkingPart part = sinking_part(tackle, rig);
  const Line& line = tackle.lines.at(rig.line);
  object["line"] = line.id;
  object["line_kind"] = word_for(line.kind);
  object["tip"] = rig.tip ? Json(tackle.tips.at(*rig.tip).id) : Json(nullptr);
  object["tip_length_m"] = part.whole_line ? Json(nullptr) : finite(part.length);
  object["sink_rate_m_s"] = finite(part.sink_rate);
  object["fly"] = tackle.flies.at(rig.fly).id;
  object["shot_kg"] = finite(rig.shot);
}

void put_technique(Json& object, const Technique& technique) {
  const bool swing = technique.method == Method::Swing, strip = technique.method == Method::Strip;
  object["method"] = word_for(technique.method);
  object["platform"] = word_for(technique.platform);
  object["mending"] = swing ? Json(plan_names::of(technique.mending)) : Json(nullptr);
  object["count_s"] = strip ? finite(technique.count) : Json(nullptr);
  object["strip_m_s"] = strip ? finite(technique.strip) : Json(nullptr);
}

Json shape_of(const RigInWater& fished) {
  if (!fished.drawn) return nullptr;
  Json list = Json::array();
  for (const auto& p : fished.drawn->shape.points) list.push_back({finite(p.away), finite(p.depth)});
  return list;
}

Json rig_of(const SinkAsked& asked, const RigInWater& fished) {
  const ScoredRig& scored = fished.scored;
  Json object = Json::object();
  put_tackle(object, asked.tackle, scored.rig);
  put_technique(object, scored.technique);
  object["leader_m"] = finite(scored.leader);
  object["indicator_to_fly_m"] =
      scored.technique.method == Method::Indicator ? finite(scored.indicator_to_fly) : Json(nullptr);
  object["finding"] = word_in(kFindings, fished.finding);
  object["fly_depth_m"] = depth_band(scored.fly_depth);
  object["zone_from_m"] = finite(fished.zone_top);
  object["in_zone_s"] = fished.in_zone ? Json{{"from", finite(fished.in_zone->from)},
                                              {"to", finite(fished.in_zone->to)},
                                              {"in_all", finite(fished.in_zone->in_all)}}
                                       : Json(nullptr);
  object["seconds_per_minute"] = finite(scored.seconds);
  object["snag_per_cast"] = finite(scored.snag_per_cast);
  object["deepest_tip_m"] = finite(fished.deepest_tip);
  object["surface_hold"] = maybe(fished.surface_hold);
  object["turbulence_bound"] = finite(fished.turbulence);
  object["shape"] = shape_of(fished);
  object["said"] = say_doubts(asked, fished);
  object["words"] = say(asked.tackle, scored, asked.units);
  return object;
}

Json count_of(const StillCount& row) {
  return {{"count_s", finite(row.count)},
          {"line_at_first_pull_m", finite(row.at_first)},
          {"line_halfway_m", finite(row.halfway)},
          {"line_near_end_m", finite(row.at_the_end)},
          {"fly_at_first_pull_m", finite(row.fly_at_first)},
          {"retrieve", word_in(kRetrieves, row.retrieve)},
          {"on_the_bed", row.to_the_bed}};
}

}  // namespace

std::string rigs_json(const SinkAsked& asked, const std::vector<RigInWater>& fished,
                      const std::vector<std::string>& left_out) {
  Json document = head("rigs_in_water");
  const KnownWater& water = asked.water;
  document["water"] = {{"depth_m", finite(water.depth)},
                       {"surface_speed_m_s", finite(water.surface_speed)},
                       {"mean_speed_m_s", finite(mean_speed(water.surface_speed, water.profile, water.depth))},
                       {"bed", word_for(water.bed)},
                       {"temperature_c", water.temperature ? finite(in_celsius(*water.temperature)) : Json(nullptr)}};
  document["rigs"] = Json::array();
  for (const RigInWater& one : fished) document["rigs"].push_back(rig_of(asked, one));
  document["left_out"] = left_out;
  return document_text(document);
}

std::string still_json(const StillAsked& asked, const std::vector<CountedRig>& rigs) {
  Json document = head("still_water_counts");
  document["depth_m"] = finite(asked.water.depth);
  document["strip_m_s"] = finite(asked.strip);
  document["layer_m"] = asked.layer ? finite(*asked.layer) : Json(nullptr);
  const bool layered = asked.lake && asked.lake->layer;
  document["lake_layer_m"] =
      layered ? Json::array({finite(asked.lake->layer->from), finite(asked.lake->layer->to)}) : Json(nullptr);
  document["rigs"] = Json::array();
  for (const CountedRig& one : rigs) {
    Json object = Json::object();
    put_tackle(object, asked.tackle, one.rig);
    object["count_to_layer_s"] = one.to_layer && *one.to_layer ? finite(**one.to_layer) : Json(nullptr);
    object["counts"] = Json::array();
    if (one.counts)
      for (const StillCount& row : *one.counts) object["counts"].push_back(count_of(row));
    object["why_none"] = one.counts ? Json(nullptr) : Json(one.counts.why_absent());
    document["rigs"].push_back(std::move(object));
  }
  return document_text(document);
}

}  // namespace floatwright
