#include "adapters/out/json/boats_json.hpp"

#include <nlohmann/json.hpp>

#include "adapters/out/json/plan_values.hpp"
#include "engine/wording/float_plan_parts.hpp"

namespace floatwright {
namespace {

Json boat_json(const BoatDay& boat) {
  const Settings& settings = boat.in.settings;
  Json object{{"boat", settings.boat_of_several}};
  object["guide"] = settings.who.empty() ? Json(nullptr) : Json(settings.who);
  object["anglers"] = settings.preferences.anglers.size();
  object["rods_asked_for"] = settings.preferences.rods_aboard;
  object.update(plan_document(boat.plan, boat.in));
  return object;
}

}  // namespace

std::string boats_json(const std::vector<BoatDay>& boats) {
  const DayPlan& plan = boats.front().plan;
  JsonPlan out{plan, boats.front().in, LocalClock(plan.time_zone), {}};
  Json document = document_head(out, "float_plans");
  document["dam_changes"] = fronts_json(out);
  document["readings"] = readings_json(out);
  document["missing_gauges"] = plan.missing_gauges;
  document["boats"] = Json::array();
  for (const BoatDay& boat : boats) document["boats"].push_back(boat_json(boat));
  document["foot"] = kFoot;
  return document_text(document);
}

}  // namespace floatwright
