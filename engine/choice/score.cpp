#include "engine/choice/score.hpp"

#include <algorithm>

#include "engine/choice/cast_time.hpp"
#include "engine/choice/fly_depth.hpp"
#include "engine/choice/limits.hpp"
#include "engine/choice/pace.hpp"
#include "engine/choice/scatter.hpp"
#include "engine/choice/seconds.hpp"
#include "engine/choice/suits.hpp"
#include "engine/choice/techniques.hpp"
#include "engine/sinking/pulled_cast.hpp"
#include "engine/water/bed_profile.hpp"

namespace floatwright {
namespace {

// The water as one case has it.
struct CaseOfWater {
  Length depth;
  SurfaceSpeed speed, boat_lane;
  const Measured<TabledWater>& water;
  const std::optional<GridPoint>& point;
};

CaseOfWater low(const Scene& scene) {
  const WaterToFish& w = scene.water;
  return {w.lane.depth.low, w.lane.surface_speed.low, w.boat_lane.low, scene.cases.low, scene.in_tables.low};
}
CaseOfWater middle(const Scene& scene) {
  const WaterToFish& w = scene.water;
  return {w.lane.depth.middle, w.lane.surface_speed.middle, w.boat_lane.middle, scene.cases.middle,
          scene.in_tables.middle};
}
CaseOfWater high(const Scene& scene) {
  const WaterToFish& w = scene.water;
  return {w.lane.depth.high, w.lane.surface_speed.high, w.boat_lane.high, scene.cases.high, scene.in_tables.high};
}

double pace_of(Speed boat, SurfaceSpeed fished) {
  const double water = in_metres_per_second(fished);  // m/s
  return water > 0 ? in_metres_per_second(boat) / water : 0.0;
}

LineKind kind_of(const Scene& scene, const Rig& rig) { return scene.tackle.lines[rig.line].kind; }

Length cast_of(const Scene& scene, const Rig& rig) {
  return cast_length(kind_of(scene, rig), scene.preferences, scene.judgement.techniques);
}

CastSetting setting_in(const Scene& scene, const Rig& rig, Platform platform, const CaseOfWater& at,
                       std::optional<Length> leader_set) {
  const Speed boat = boat_speed(platform, at.boat_lane, at.speed, scene.judgement);
  return {*at.water, boat, cast_of(scene, rig), rod_length(scene.tackle, rig), scene.limits, leader_set};
}

// By technique; fewer where one has no table.
std::vector<Measured<CastPath>> tabled_casts(const Scene& scene, const Rig& rig, std::span<const Technique> techniques,
                                             const CaseOfWater& at) {
  std::vector<Measured<CastPath>> paths;
  if (scene.tables == nullptr || !at.point) return paths;
  const Length cast = cast_of(scene, rig);
  const double pace =
      pace_of(boat_speed(techniques.front().platform, at.boat_lane, at.speed, scene.judgement), at.speed);
  for (const Technique& technique : techniques) {
    auto path = scene.tables->cast(rig, technique, cast, pace, *at.point);
    if (!path) break;
    paths.emplace_back(*std::move(path));
  }
  return paths;
}

std::vector<Measured<CastPath>> casts_in(const Scene& scene, const Rig& rig, std::span<const Technique> techniques,
                                         const CaseOfWater& at, Casts casts, std::optional<Length> leader_set) {
  if (!at.water) return std::vector<Measured<CastPath>>(techniques.size(), Absent{at.water.why_absent()});
  if (casts == Casts::FromTables) {
    auto paths = tabled_casts(scene, rig, techniques, at);
    if (paths.size() == techniques.size()) return paths;
  }
  return cast_paths(scene.tackle, rig, techniques, setting_in(scene, rig, techniques.front().platform, at, leader_set));
}

Zone zone_in(const Scene& scene, Method method, const CaseOfWater& at) {
  const WaterToFish& w = scene.water;
  const Lie lie{at.depth, at.speed, bed_profile(w.bed, at.depth), w.bed, w.temperature, w.clarity};
  return zone(lie, method, scene.judgement.zone);
}

FishedCase fished(const Scene& scene, const Way& way, const CaseOfWater& at, const CastPath* path) {
  return {path, zone_in(scene, way.technique.method, at)};
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

const CastPath* path_of(const Measured<CastPath>& cast) { return cast ? &*cast : nullptr; }

double worth_of(const Scene& scene, Method method, double efficiency) {
  const WaterToFish& w = scene.water;
  const auto preference = scene.preferences.methods.find(method);
  if (preference == scene.preferences.methods.end()) return 0.0;
  const double suited =
      suits(method, {w.type, w.temperature, w.clarity, w.sun_elevation, w.hatch, w.wind}, scene.judgement.suits);
  return worth(preference->second, suited, efficiency, scene.judgement.choice);
}

ScoredRig with_worth(const Scene& scene, const Way& way, const CastPath& path, const EffectiveSeconds& found) {
  ScoredRig result = scored_rig(way, path, found, scene.water.lane.depth, scene.judgement);
  result.worth = worth_of(scene, way.technique.method, found.efficiency);
  return result;
}

}  // namespace

Scene scene_of(const WaterToFish& water, const Tackle& tackle, const Preferences& preferences,
               const Judgement& judgement, const FishingTables* tables) {
  const Temperature warmth = water.temperature ? *water.temperature : celsius(10.0);
  const PerCase<Length>& depth = water.lane.depth;
  const PerCase<SurfaceSpeed>& speed = water.lane.surface_speed;
  const auto tabled = [&](Length h, SurfaceSpeed u) { return tabled_water(h, u, bed_profile(water.bed, h), warmth); };
  const auto point = [&](Length h, SurfaceSpeed u) { return grid_point(h, u, warmth, bed_profile(water.bed, h)); };
  return {water,
          tackle,
          preferences,
          judgement,
          tables,
          drift_limits(judgement),
          {tabled(depth.low, speed.low), tabled(depth.middle, speed.middle), tabled(depth.high, speed.high)},
          {point(depth.low, speed.low), point(depth.middle, speed.middle), point(depth.high, speed.high)}};
}

ScoredRig scored_rig(const Way& way, const CastPath& path, const EffectiveSeconds& found,
                     const PerCase<Length>& water_depth, const Judgement& judgement) {
  ScoredRig result;
  result.rig = way.rig;
  result.technique = way.technique;
  result.leader = path.leader;
  result.indicator_to_fly = path.indicator_to_fly;
  result.seconds = found.seconds;
  result.efficiency = found.efficiency;
  result.snag_per_cast = found.snag_per_cast;
  result.fly_depth = fly_depth_band({found.fly_depth, water_depth, path.indicator_to_fly}, way.technique, judgement);
  return result;
}

std::vector<RigWays> ways(const Scene& scene, Method method) {
  const CaseOfWater at = middle(scene);
  std::vector<RigWays> result;
  for (const Rig& rig : rigs_for(scene.tackle, method)) {
    for (const Platform platform : scene.water.platforms) {
      const double pace = pace_of(boat_speed(platform, at.boat_lane, at.speed, scene.judgement), at.speed);
      auto here = techniques(method, kind_of(scene, rig), platform, pace, scene.judgement);
      if (!here.empty()) result.push_back({rig, std::move(here)});
    }
  }
  return result;
}

std::vector<Measured<CastPath>> middle_casts(const Scene& scene, const Rig& rig, std::span<const Technique> techniques,
                                             Casts casts, std::optional<Length> leader_set) {
  return casts_in(scene, rig, techniques, middle(scene), casts, leader_set);
}

CastSetting middle_setting(const Scene& scene, const Rig& rig, Platform platform, std::optional<Length> leader_set) {
  return setting_in(scene, rig, platform, middle(scene), leader_set);
}

Zone middle_zone(const Scene& scene, Method method) { return zone_in(scene, method, middle(scene)); }

double most_worth(const Scene& scene, Method method) {
  return worth_of(scene, method, scene.judgement.choice.enough_efficiency);
}

EffectiveSeconds middle_seconds(const Scene& scene, const Way& way, const CastPath& path) {
  const FishedCase known = fished(scene, way, middle(scene), &path);
  return effective_seconds(seconds_of(fishing(scene, way), known, scene.judgement));
}

ScoredRig score_middle(const Scene& scene, const Way& way, const CastPath& path) {
  return with_worth(scene, way, path, middle_seconds(scene, way, path));
}

namespace {

using CasesOfPaths = PerCase<std::vector<const CastPath*>>;  // by technique

std::vector<ScoredRig> scored(const Scene& scene, const RigWays& ways, const CasesOfPaths& paths) {
  std::vector<ScoredRig> result;
  for (std::size_t i = 0; i < ways.techniques.size(); ++i) {
    const Way way{ways.rig, ways.techniques[i]};
    const PerCase<FishedCase> cases{fished(scene, way, low(scene), paths.low[i]),
                                    fished(scene, way, middle(scene), paths.middle[i]),
                                    fished(scene, way, high(scene), paths.high[i])};
    const EffectiveSeconds found = effective_seconds(fishing(scene, way), cases, scene.judgement);
    result.push_back(with_worth(scene, way, *paths.middle[i], found));
  }
  return result;
}

std::vector<const CastPath*> paths_of(const std::vector<Measured<CastPath>>& casts) {
  std::vector<const CastPath*> paths;
  for (const auto& cast : casts) paths.push_back(path_of(cast));
  return paths;
}

}  // namespace

std::vector<ScoredRig> score(const Scene& scene, const RigWays& ways, std::span<const CastPath* const> middle_paths) {
  std::optional<Length> leader_set;
  if (ways.techniques.front().method == Method::Indicator) leader_set = middle_paths.front()->indicator_to_fly;
  const auto in_low = casts_in(scene, ways.rig, ways.techniques, low(scene), Casts::FromTables, leader_set);
  const auto in_high = casts_in(scene, ways.rig, ways.techniques, high(scene), Casts::FromTables, leader_set);
  return scored(scene, ways, {paths_of(in_low), {middle_paths.begin(), middle_paths.end()}, paths_of(in_high)});
}

std::vector<ScoredRig> work_out(const Scene& scene, const RigWays& ways) {
  std::vector<WaterAndBoat> places;
  for (const CaseOfWater& at : {low(scene), middle(scene), high(scene)}) {
    if (!at.water) return {};
    const Platform platform = ways.techniques.front().platform;
    places.push_back({&*at.water, boat_speed(platform, at.boat_lane, at.speed, scene.judgement)});
  }
  const auto casts =
      pulled_casts(scene.tackle, ways.rig, ways.techniques, {cast_of(scene, ways.rig), scene.limits, places});
  const CasesOfPaths paths{paths_of(casts[0]), paths_of(casts[1]), paths_of(casts[2])};
  if (std::ranges::find(paths.middle, nullptr) != paths.middle.end()) return {};
  return scored(scene, ways, paths);
}

}  // namespace floatwright
