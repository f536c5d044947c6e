#include "engine/choice/flows_ahead.hpp"

#include <algorithm>
#include <utility>

#include "engine/sinking/pulled_cast.hpp"

namespace floatwright {
namespace {

bool is_far(const WaterToFish& water, Discharge flow, const FlowJudgement& judgement) {
  if (water.lane.noted_at <= Discharge{}) return water.lane.far_from_note;
  return flow < judgement.least_of_noted * water.lane.noted_at || flow > judgement.most_of_noted * water.lane.noted_at;
}

bool as_warm(const WaterToFish& a, const WaterToFish& b) {
  if (!a.temperature || !b.temperature) return !a.temperature && !b.temperature;
  return *a.temperature == *b.temperature;
}

}  // namespace

SceneAtFlow::SceneAtFlow(WaterToFish there, const LineAsked& asked)
    : water(std::move(there)), scene(scene_of(water, asked.tackle, asked.preferences, asked.judgement, asked.tables)) {}

SceneAtFlow* FlowsAhead::at(double factor) {
  const auto [known, is_new] = scenes_.try_emplace(factor);
  if (!is_new) return known->second.get();
  const Discharge flow = factor * present_.flow;
  auto water = present_.water_at(flow);
  if (water && !is_far(*water, flow, asked_.judgement.flow))
    known->second = std::make_unique<SceneAtFlow>(*std::move(water), asked_);
  return known->second.get();
}

// Here, and of what is expected where the tables leave the cast open too.
std::vector<SceneAtFlow*> FlowsAhead::without_it(SceneAtFlow& here, const Way& way) {
  std::vector<SceneAtFlow*> scenes{&here};
  for (const double factor : expected_) {
    SceneAtFlow* there = at(factor);
    if (there == nullptr || there == &here || there->casts.contains(&way)) continue;
    const bool is_tabled = there->scene.in_tables.middle && there->scene.cases.middle;
    if (is_tabled && as_warm(there->water, here.water)) scenes.push_back(there);
  }
  return scenes;
}

const Measured<CastPath>& FlowsAhead::cast(SceneAtFlow& here, const Way& wanted) {
  const Way& way =
      *std::ranges::find_if(asked_.candidates, [&](const Way& w) { return cast_alike(here.scene, w, wanted); });
  if (const auto known = here.casts.find(&way); known != here.casts.end()) return known->second;
  const std::vector<SceneAtFlow*> there = without_it(here, way);
  std::vector<WaterAndBoat> water;
  for (const SceneAtFlow* one : there) water.push_back(middle_place(one->scene, way.technique.platform));
  const auto casts = pulled_casts(asked_.tackle, way.rig, {&way.technique, 1},
                                  {cast_of(here.scene, way.rig), here.scene.limits, water});
  for (std::size_t i = 0; i < there.size(); ++i) there[i]->casts.emplace(&way, casts[i].front());
  return here.casts.at(&way);
}

}  // namespace floatwright
