#include "engine/choice/score.hpp"

#include <algorithm>

#include "engine/choice/cast_time.hpp"
#include "engine/choice/fly_depth.hpp"
#include "engine/choice/limits.hpp"
#include "engine/choice/pace.hpp"
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

CastSetting setting_in(const Scene& scene, const Rig& rig, Platform platform, const CaseOfWater& at,
                       std::optional<SetLeader> leader_set) {
  const Speed boat = boat_speed(platform, at.boat_lane, at.speed, scene.judgement);
  return {*at.water, boat, cast_of(scene, rig), rod_length(scene.tackle, rig), scene.limits, leader_set};
}

// Of water that there is.
WaterAndBoat place(const Scene& scene, const CaseOfWater& at, Platform platform) {
  return {&*at.water, boat_speed(platform, at.boat_lane, at.speed, scene.judgement)};
}

using PathsByTechnique = std::vector<Measured<CastPath>>;

// By how much warmer the water is than the tables' and by technique; empty where one has no table.
std::vector<PathsByTechnique> tabled_casts(const Scene& scene, const Rig& rig, std::span<const Technique> techniques,
                                           const CaseOfWater& at, std::span<const double> warmer_c) {
  if (scene.tables == nullptr || !at.point) return {};
  std::vector<PathsByTechnique> paths(warmer_c.size());
  const Length cast = cast_of(scene, rig);
  const double pace =
      pace_of(boat_speed(techniques.front().platform, at.boat_lane, at.speed, scene.judgement), at.speed);
  for (const Technique& technique : techniques) {
    auto by_warmth = scene.tables->casts(rig, technique, cast, pace, *at.point, warmer_c);
    if (by_warmth.empty()) return {};
    for (std::size_t i = 0; i < by_warmth.size(); ++i) paths[i].emplace_back(std::move(by_warmth[i]));
  }
  return paths;
}

PathsByTechnique casts_in(const Scene& scene, const Rig& rig, std::span<const Technique> techniques,
                          const CaseOfWater& at, Casts casts, std::optional<SetLeader> leader_set) {
  if (!at.water) return PathsByTechnique(techniques.size(), Absent{at.water.why_absent()});
  if (casts == Casts::FromTables && at.point) {
    auto paths = tabled_casts(scene, rig, techniques, at, {&at.point->warmer_c, 1});
    if (!paths.empty()) return std::move(paths.front());
  }
  return cast_paths(scene.tackle, rig, techniques, setting_in(scene, rig, techniques.front().platform, at, leader_set));
}

const PerCase<Zone>& zones_of(const Scene& scene, Method method) {
  return scene.shared.zones[static_cast<std::size_t>(method)];
}

Fishing fishing(const Scene& scene, const Way& way) {
  Fishing result;
  result.method = way.technique.method;
  result.bed = scene.water.bed;
  result.hatch = scene.water.hatch;
  result.easy = scene.shared.easy;
  result.paid = cast_time(kind_of(scene, way.rig), sinking_part(scene.tackle, way.rig), way.technique,
                          cast_of(scene, way.rig), scene.judgement.times);
  result.scatter = scene.shared.scatter[static_cast<std::size_t>(firmness(way.technique))];
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

SharedByWays shared_by_ways(const WaterToFish& water, const Judgement& judgement) {
  SharedByWays shared;
  shared.easy = easy_speed(water.temperature, judgement.pace);
  const auto zone_at = [&](Method method, Length depth, SurfaceSpeed speed) {
    const Lie lie{depth, speed, bed_profile(water.bed, depth), water.bed, water.temperature, water.clarity};
    return zone(lie, method, judgement.zone);
  };
  const PerCase<Length>& depth = water.lane.depth;
  const PerCase<SurfaceSpeed>& speed = water.lane.surface_speed;
  for (std::size_t i = 0; i < kMethods; ++i) {
    const auto method = static_cast<Method>(i);
    shared.zones[i] = {zone_at(method, depth.low, speed.low), zone_at(method, depth.middle, speed.middle),
                       zone_at(method, depth.high, speed.high)};
  }
  for (std::size_t i = 0; i < kFirmnesses; ++i)
    shared.scatter[i] = scatter_factors(static_cast<Firmness>(i), water.lane, judgement.scatter);
  return shared;
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
          {point(depth.low, speed.low), point(depth.middle, speed.middle), point(depth.high, speed.high)},
          shared_by_ways(water, judgement)};
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
                                             Casts casts, std::optional<SetLeader> leader_set) {
  return casts_in(scene, rig, techniques, middle(scene), casts, leader_set);
}

std::array<std::vector<Measured<CastPath>>, 2> middle_casts(const Scene& cold, const Scene& warm, const Rig& rig,
                                                            std::span<const Technique> techniques) {
  const CaseOfWater at = middle(cold), warmer = middle(warm);
  if (at.water && at.point && warmer.point) {
    const std::array warmer_c{at.point->warmer_c, warmer.point->warmer_c};
    auto paths = tabled_casts(cold, rig, techniques, at, warmer_c);
    if (!paths.empty()) return {std::move(paths.front()), std::move(paths.back())};
  }
  return {middle_casts(cold, rig, techniques, Casts::FromTables),
          middle_casts(warm, rig, techniques, Casts::FromTables)};
}

Length cast_of(const Scene& scene, const Rig& rig) {
  return cast_length(kind_of(scene, rig), scene.preferences, scene.judgement.techniques);
}

bool cast_alike(const Scene& scene, const Way& a, const Way& b) {
  if (a.technique != b.technique) return false;
  if (a.rig == b.rig) return true;
  if (scene.tables == nullptr) return false;
  const auto build = [&](const Way& way) {
    return scene.tables->build(way.rig, way.technique.method, cast_of(scene, way.rig));
  };
  const auto one = build(a);
  return one && one == build(b);
}

WaterAndBoat middle_place(const Scene& scene, Platform platform) { return place(scene, middle(scene), platform); }

std::vector<WaterAndBoat> places(const Scene& scene, Platform platform) {
  std::vector<WaterAndBoat> result;
  for (const CaseOfWater& at : {low(scene), middle(scene), high(scene)}) {
    if (!at.water) return {};
    result.push_back(place(scene, at, platform));
  }
  return result;
}

CastSetting middle_setting(const Scene& scene, const Rig& rig, Platform platform, std::optional<SetLeader> leader_set) {
  return setting_in(scene, rig, platform, middle(scene), leader_set);
}

const Zone& middle_zone(const Scene& scene, Method method) { return zones_of(scene, method).middle; }

bool may_be_taken(const Scene& scene, Method method) {
  const PerCase<Zone>& zones = zones_of(scene, method);
  return zones.low.presence > 0.0 || zones.middle.presence > 0.0 || zones.high.presence > 0.0;
}

double most_worth(const Scene& scene, Method method) {
  return worth_of(scene, method, scene.judgement.choice.enough_efficiency);
}

MiddleSeconds middle_seconds(const Scene& scene, const Way& way, const CastPath& path, double beaten) {
  const FishedCase known{&path, middle_zone(scene, way.technique.method)};
  const auto found = seconds_over(beaten, fishing(scene, way), known, scene.judgement);
  return found ? MiddleSeconds{found->seconds, efficiency_of(*found)} : MiddleSeconds{};
}

ScoredRig score_middle(const Scene& scene, const Way& way, const CastPath& path) {
  const FishedCase known{&path, middle_zone(scene, way.technique.method)};
  return with_worth(scene, way, path, effective_seconds(seconds_of(fishing(scene, way), known, scene.judgement)));
}

std::vector<ScoredRig> score(const Scene& scene, const RigWays& ways,
                             const PerCase<std::vector<const CastPath*>>& paths) {
  std::vector<ScoredRig> result;
  for (std::size_t i = 0; i < ways.techniques.size(); ++i) {
    const Way way{ways.rig, ways.techniques[i]};
    const PerCase<Zone>& zones = zones_of(scene, way.technique.method);
    const PerCase<FishedCase> cases{
        {paths.low[i], zones.low}, {paths.middle[i], zones.middle}, {paths.high[i], zones.high}};
    const EffectiveSeconds found = effective_seconds(fishing(scene, way), cases, scene.judgement);
    result.push_back(with_worth(scene, way, *paths.middle[i], found));
  }
  return result;
}

namespace {

std::vector<const CastPath*> paths_of(const std::vector<Measured<CastPath>>& casts) {
  std::vector<const CastPath*> paths;
  for (const auto& cast : casts) paths.push_back(path_of(cast));
  return paths;
}

}  // namespace

std::vector<ScoredRig> score(const Scene& scene, const RigWays& ways, std::span<const CastPath* const> middle_paths) {
  std::optional<SetLeader> leader_set;
  if (ways.techniques.front().method == Method::Indicator)
    leader_set = SetLeader{middle_paths.front()->indicator_to_fly, {}};
  const auto in_low = casts_in(scene, ways.rig, ways.techniques, low(scene), Casts::FromTables, leader_set);
  const auto in_high = casts_in(scene, ways.rig, ways.techniques, high(scene), Casts::FromTables, leader_set);
  return score(scene, ways,
               PerCase<std::vector<const CastPath*>>{
                   paths_of(in_low), {middle_paths.begin(), middle_paths.end()}, paths_of(in_high)});
}

}  // namespace floatwright
