#include "adapters/out/state/handed_out_json.hpp"

#include <nlohmann/json.hpp>

namespace floatwright {
namespace {

using Json = nlohmann::json;

Json seconds(Instant t) { return t.time_since_epoch().count(); }
Json seconds(const std::optional<Instant>& t) { return t ? seconds(*t) : Json(nullptr); }
Instant instant(const Json& written) { return Instant{Period{written.get<Period::rep>()}}; }
std::optional<Instant> maybe_instant(const Json& written) {
  return written.is_null() ? std::nullopt : std::optional{instant(written)};
}

Json days(std::chrono::year_month_day day) { return std::chrono::sys_days{day}.time_since_epoch().count(); }
std::chrono::year_month_day day(const Json& written) { return std::chrono::sys_days{std::chrono::days{written.get<int>()}}; }

Json rod_json(const RodHandedOut& rod) {
  return {{"rod", rod.rod}, {"line", rod.line}, {"tip", rod.tip}, {"fly", rod.fly}, {"shot_kg", rod.shot.si()}};
}
RodHandedOut rod_from(const Json& in) {
  return {in.at("rod"), in.at("line"), in.at("tip"), in.at("fly"), Mass::from_si(in.at("shot_kg").get<double>())};
}

Json stretch_json(const StretchHandedOut& s) {
  Json rods = Json::array();
  for (const RodHandedOut& rod : s.rods) rods.push_back(rod_json(rod));
  return {{"from", s.from},
          {"to", s.to},
          {"from_name", s.from_name},
          {"to_name", s.to_name},
          {"launch", seconds(s.launch)},
          {"off_by", seconds(s.off_by)},
          {"stop_by", seconds(s.stop_by)},
          {"flow_m3_s", s.flow ? Json(s.flow->si()) : Json(nullptr)},
          {"water_c", s.water ? Json(in_celsius(*s.water)) : Json(nullptr)},
          {"rods", std::move(rods)}};
}
StretchHandedOut stretch_from(const Json& in) {
  StretchHandedOut s{in.at("from"), in.at("to"), in.at("from_name"), in.at("to_name"),
                     instant(in.at("launch")), instant(in.at("off_by")), maybe_instant(in.at("stop_by")), {}, {}, {}};
  if (const Json& flow = in.at("flow_m3_s"); !flow.is_null()) s.flow = Discharge::from_si(flow.get<double>());
  if (const Json& water = in.at("water_c"); !water.is_null()) s.water = celsius(water.get<double>());
  for (const Json& rod : in.at("rods")) s.rods.push_back(rod_from(rod));
  return s;
}

Json caution_json(const CautionHandedOut& c) {
  return {{"kind", static_cast<int>(c.kind)}, {"where", c.where}, {"about", c.about}, {"at", seconds(c.at)}};
}
CautionHandedOut caution_from(const Json& in) {
  return {static_cast<CautionKind>(in.at("kind").get<int>()), in.at("where"), in.at("about"), maybe_instant(in.at("at"))};
}

}  // namespace

Json as_json(const HandedOut& plan) {
  Json cautions = Json::array();
  for (const CautionHandedOut& caution : plan.cautions) cautions.push_back(caution_json(caution));
  return {{"made_at", seconds(plan.made_at)},
          {"day", days(plan.day)},
          {"whose", plan.whose},
          {"stretch", plan.stretch ? stretch_json(*plan.stretch) : Json(nullptr)},
          {"cautions", std::move(cautions)}};
}

HandedOut handed_out_from(const Json& in) {
  HandedOut plan{instant(in.at("made_at")), day(in.at("day")), in.at("whose"), {}, {}};
  if (const Json& stretch = in.at("stretch"); !stretch.is_null()) plan.stretch = stretch_from(stretch);
  for (const Json& caution : in.at("cautions")) plan.cautions.push_back(caution_from(caution));
  return plan;
}

}  // namespace floatwright
