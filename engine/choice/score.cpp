#include "engine/choice/score.hpp"

#include <algorithm>

#include "engine/choice/cast_time.hpp"
#include "engine/choice/fly_depth.hpp"
#include "engine/choice/mends.hpp"
#include "engine/choice/pace.hpp"
#include "engine/choice/scatter.hpp"
#include "engine/choice/seconds.hpp"
#include "engine/choice/suits.hpp"
#include "engine/choice/techniques.hpp"

namespace floatwright {
namespace {

// The water as one case has it.
struct CaseOfWater {
  Length depth;
  SurfaceSpeed speed, boat_lane;
};

CaseOfWater low(const WaterToFish& w) { return {w.lane.depth.low, w.lane.surface_speed.low, w.boat_lane.low}; }
CaseOfWater middle(const WaterToFish& w) {
  return {w.lane.depth.middle, w.lane.surface_speed.middle, w.boat_lane.middle};
}
CaseOfWater high(const WaterToFish& w) { return {w.lane.depth.high, w.lane.surface_speed.high, w.boat_lane.high}; }

LineKind kind_of(const Scene& scene, const Rig& rig) { return scene.tackle.lines[rig.line].kind; }

// The advice must hold for whoever casts shortest.
Length cast_of(const Scene& scene, const Rig& rig) {
  const auto& anglers = scene.preferences.anglers;
  const auto shorter = [](const Angler& a, const Angler& b) { return a.cast < b.cast; };
  const Length cast = anglers.empty() ? Angler{}.cast : std::ranges::min_element(anglers, shorter)->cast;
  return cast_length(kind_of(scene, rig), cast, scene.judgement.techniques);
}

Length rod_of(const Scene& scene, const Rig& rig) {
  const auto& rods = scene.tackle.rods;
  const auto rod = std::ranges::find(rods, scene.tackle.lines[rig.line].on_rod, &Rod::id);
  return rod == rods.end() ? feet(9.0) : rod->length;
}

Measured<CastPath> cast_in(const Scene& scene, const Way& way, const CaseOfWater& at,
                           std::optional<Length> leader_set) {
  if (at.depth <= Length{}) return Absent{"no water in it"};
  CastWater water;
  water.depth = at.depth;
  water.surface_speed = at.speed;
  water.boat = boat_speed(way.technique.platform, at.boat_lane, at.speed, scene.judgement.boat);
  if (scene.water.temperature) water.temperature = *scene.water.temperature;
  return cast_path(scene.tackle, way.rig, way.technique, water, cast_of(scene, way.rig), rod_of(scene, way.rig),
                   leader_set);
}

FishedCase fished(const Scene& scene, const Way& way, const CaseOfWater& at, const CastPath* path) {
  const WaterToFish& w = scene.water;
  FishedCase result;
  result.path = path;
  result.zone = zone({at.depth, at.speed, Profile{}, w.bed, w.temperature, w.clarity}, way.technique.method,
                     scene.judgement.zone);
  Drift drift;
  drift.method = way.technique.method;
  drift.kind = kind_of(scene, way.rig);
  drift.platform = way.technique.platform;
  drift.surface_speed = at.speed;
  drift.cast = cast_of(scene, way.rig);
  drift.passing = metres_per_second(in_metres_per_second(at.speed));
  if (drift.method == Method::Indicator && path && !path->samples.empty())
    drift.passing = path->samples.front().over_ground;
  result.longest = longest_fishing(drift, scene.judgement);
  return result;
}

Fishing fishing(const Scene& scene, const Way& way) {
  Fishing result;
  result.method = way.technique.method;
  result.bed = scene.water.bed;
  result.hatch = scene.water.hatch;
  result.easy = easy_speed(scene.water.temperature, scene.judgement.pace);
  result.paid = cast_time(kind_of(scene, way.rig), sinking_part(scene.tackle, way.rig), way.technique,
                          cast_of(scene, way.rig), scene.judgement.times);
  result.scatter = scatter_factors(way.technique, scene.water.lane, scene.judgement.scatter);
  return result;
}

double worth_of(const Scene& scene, Method method, double efficiency) {
  const WaterToFish& w = scene.water;
  const auto preference = scene.preferences.methods.find(method);
  if (preference == scene.preferences.methods.end()) return 0.0;
  const double suited =
      suits(method, {w.type, w.temperature, w.clarity, w.sun_elevation, w.hatch}, scene.judgement.suits);
  return worth(preference->second, suited, efficiency, scene.judgement.choice);
}

ScoredRig with_worth(const Scene& scene, const Way& way, const CastPath& path, const EffectiveSeconds& found) {
  ScoredRig result;
  result.rig = way.rig;
  result.technique = way.technique;
  result.leader = path.leader;
  result.indicator_to_fly = path.indicator_to_fly;
  result.seconds = found.seconds;
  result.efficiency = found.efficiency;
  result.snag_per_cast = found.snag_per_cast;
  result.worth = worth_of(scene, way.technique.method, found.efficiency);
  const FlyDepthCases depths{found.fly_depth, scene.water.lane.depth, path.indicator_to_fly};
  result.fly_depth = fly_depth_band(depths, way.technique, scene.judgement);
  return result;
}

}  // namespace

std::vector<Way> ways(const Scene& scene, Method method) {
  const CaseOfWater at = middle(scene.water);
  std::vector<Way> result;
  for (const Rig& rig : rigs_for(scene.tackle, method)) {
    for (const Platform platform : scene.water.platforms) {
      const Speed boat = boat_speed(platform, at.boat_lane, at.speed, scene.judgement.boat);
      const double water = in_metres_per_second(at.speed);  // m/s
      const double pace = water > 0 ? in_metres_per_second(boat) / water : 0.0;
      for (const Technique& technique : techniques(method, kind_of(scene, rig), platform, pace, scene.judgement)) {
        result.push_back({rig, technique});
      }
    }
  }
  return result;
}

Measured<CastPath> middle_cast(const Scene& scene, const Way& way) {
  return cast_in(scene, way, middle(scene.water), std::nullopt);
}

double most_worth(const Scene& scene, Method method) {
  return worth_of(scene, method, scene.judgement.choice.enough_efficiency);
}

ScoredRig score_middle(const Scene& scene, const Way& way, const CastPath& path) {
  const FishedCase known = fished(scene, way, middle(scene.water), &path);
  return with_worth(scene, way, path, effective_seconds(seconds_of(fishing(scene, way), known, scene.judgement)));
}

ScoredRig score(const Scene& scene, const Way& way, const CastPath& path) {
  std::optional<Length> leader_set;
  if (way.technique.method == Method::Indicator) leader_set = path.indicator_to_fly;
  const Measured<CastPath> in_low = cast_in(scene, way, low(scene.water), leader_set);
  const Measured<CastPath> in_high = cast_in(scene, way, high(scene.water), leader_set);
  const PerCase<FishedCase> cases{fished(scene, way, low(scene.water), in_low ? &*in_low : nullptr),
                                  fished(scene, way, middle(scene.water), &path),
                                  fished(scene, way, high(scene.water), in_high ? &*in_high : nullptr)};
  return with_worth(scene, way, path, effective_seconds(fishing(scene, way), cases, scene.judgement));
}

}  // namespace floatwright
