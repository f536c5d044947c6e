#include "engine/coverage/line_seconds.hpp"

#include <algorithm>
#include <tuple>

#include "engine/choice/techniques.hpp"

namespace floatwright {
namespace {

WaysFished way_of(Method method) { return is_pulled(method) ? WaysFished::Pulled : WaysFished::Drifted; }

// An indicator's leader hangs on fly, shot and rod, not on line or platform: solved once a water.
using LeaderKey = std::tuple<std::size_t, Mass, Length>;
using KnownLeaders = std::map<LeaderKey, SetLeader>;

using CastsByTechnique = std::vector<Measured<CastPath>>;

CastsByTechnique casts_of(const Scene& scene, const RigWays& ways, KnownLeaders& leaders) {
  if (ways.techniques.front().method != Method::Indicator)
    return middle_casts(scene, ways.rig, ways.techniques, Casts::FromTables);
  const LeaderKey key{ways.rig.fly, ways.rig.shot, rod_length(scene.tackle, ways.rig)};
  const auto known = leaders.find(key);
  const auto set = known == leaders.end() ? std::nullopt : std::optional(known->second);
  auto casts = middle_casts(scene, ways.rig, ways.techniques, Casts::FromTables, set);
  if (casts.front() && !set) leaders.emplace(key, set_leader(*casts.front()));
  return casts;
}

// `path`, whose room is used again, a way between two of one way of fishing.
void set_between(CastPath& path, const CastPath& cold, const CastPath& warm, double way) {
  const auto mix = [way](auto a, auto b) { return a + way * (b - a); };
  path = cold;
  path.time_to_hang_down = mix(cold.time_to_hang_down, warm.time_to_hang_down);
  for (std::size_t i = 0; i < std::min(cold.samples.size(), warm.samples.size()); ++i) {
    const CastSample &a = cold.samples[i], &b = warm.samples[i];
    path.samples[i] = {mix(a.t, b.t), mix(a.fly_depth, b.fly_depth), mix(a.tip_depth, b.tip_depth),
                       mix(a.over_ground, b.over_ground), mix(a.through_water, b.through_water), a.bearing};
  }
}

// One water at several temperatures.
struct Warmths {
  std::vector<WaterToFish> waters;  // which the scenes refer to
  std::vector<Scene> scenes;
  std::vector<KnownLeaders> leaders;

  // From the coldest to the warmest, 0 to 1.
  [[nodiscard]] double way_to(std::size_t i) const {
    if (i == 0) return 0.0;
    const auto degrees = [&](const WaterToFish& water) { return in_celsius(*water.temperature); };
    const double cold = degrees(waters.front()), warm = degrees(waters.back());
    return (degrees(waters[i]) - cold) / (warm - cold);
  }
};

void keep_best(const Scene& scene, const Way& way, const CastPath& path, LineSeconds& best) {
  const MiddleSeconds found = middle_seconds(scene, way, path, best.seconds);
  if (found.seconds > best.seconds) best = {found.seconds, found.efficiency};
}

// The casts in the coldest and the warmest water.
std::array<CastsByTechnique, 2> ends_of(Warmths& at, const RigWays& ways) {
  if (at.scenes.size() == 1) {
    const CastsByTechnique casts = casts_of(at.scenes.front(), ways, at.leaders.front());
    return {casts, casts};
  }
  if (ways.techniques.front().method != Method::Indicator)
    return middle_casts(at.scenes.front(), at.scenes.back(), ways.rig, ways.techniques);
  return {casts_of(at.scenes.front(), ways, at.leaders.front()), casts_of(at.scenes.back(), ways, at.leaders.back())};
}

// From the casts in the coldest and the warmest water; an indicator's leader goes by half feet, and where it steps between
// the two each is worked out. `best`: by warmth.
void keep_best(Warmths& at, const RigWays& ways, std::span<LineSeconds* const> best) {
  const std::size_t last = at.scenes.size() - 1;
  const auto casts_at = [&](std::size_t i) { return casts_of(at.scenes[i], ways, at.leaders[i]); };
  const auto [cold, warm] = ends_of(at, ways);
  CastPath between;
  for (std::size_t technique = 0; technique < cold.size(); ++technique) {
    const Measured<CastPath>&a = cold[technique], &b = warm[technique];
    if (!a || !b) continue;
    const bool steps = a->indicator_to_fly != b->indicator_to_fly;
    for (std::size_t i = 0; i <= last; ++i) {
      const Way way{ways.rig, ways.techniques[technique]};
      if (steps) {
        const Measured<CastPath> path = casts_at(i)[technique];
        if (path) keep_best(at.scenes[i], way, *path, *best[i]);
      } else {
        set_between(between, *a, *b, at.way_to(i));
        keep_best(at.scenes[i], way, between, *best[i]);
      }
    }
  }
}

// One who wades casts as one at anchor does (engine/sinking/drift_limits.hpp).
std::vector<Platform> told_apart(std::vector<Platform> platforms) {
  if (std::ranges::find(platforms, Platform::Anchored) != platforms.end()) std::erase(platforms, Platform::Wading);
  return platforms;
}

}  // namespace

LinesAtHand::LinesAtHand(const Tackle& tackle, const std::vector<ConsideredLine>& lines, const Preferences& preferences,
                         const Judgement& judgement, const FishingTables* tables)
    : tackle_(tackle), preferences_(preferences), judgement_(judgement), tables_(tables), lines_(lines.size()) {
  for (const auto& [method, preference] : preferences.methods) {
    if (preference <= 0.0) continue;
    for (const Rig& rig : rigs_for(tackle, method)) {
      const auto line = std::ranges::find_if(
          lines, [&](const ConsideredLine& one) { return one.line == rig.line && one.tip == rig.tip; });
      if (line != lines.end()) rigs_[method].push_back({rig, static_cast<std::size_t>(line - lines.begin())});
    }
  }
}

std::vector<RigWays> LinesAtHand::ways_of(const Rig& rig, Method method, const WaterToFish& water) const {
  const SurfaceSpeed fished = water.lane.surface_speed.middle;
  std::vector<RigWays> all;
  for (const Platform platform : told_apart(water.platforms)) {
    const Speed boat = boat_speed(platform, water.boat_lane.middle, fished, judgement_);
    const double speed = in_metres_per_second(fished);  // m/s
    const double pace = speed > 0.0 ? in_metres_per_second(boat) / speed : 0.0;
    RigWays here{rig, techniques(method, tackle_.lines[rig.line].kind, platform, pace, judgement_)};
    if (!here.techniques.empty()) all.push_back(std::move(here));
  }
  return all;
}

std::vector<std::vector<SecondsByMethod>> LinesAtHand::seconds_in(std::span<const WaterAtWarmths> waters,
                                                                  WaysFished ways) const {
  std::vector<Warmths> at;
  std::vector<std::vector<SecondsByMethod>> found;
  for (const WaterAtWarmths& one : waters) {
    Warmths& there = at.emplace_back(std::vector<WaterToFish>(one.warmths.size(), one.water), std::vector<Scene>{},
                                     std::vector<KnownLeaders>(one.warmths.size()));
    for (std::size_t i = 0; i < one.warmths.size(); ++i) there.waters[i].temperature = one.warmths[i];
    for (const WaterToFish& water : there.waters)
      there.scenes.push_back(scene_of(water, tackle_, preferences_, judgement_, tables_));
    found.emplace_back(one.warmths.size());
  }
  for (const auto& [method, rigs] : rigs_) {
    if (way_of(method) != ways) continue;
    for (auto& there : found)
      for (SecondsByMethod& at_warmth : there) at_warmth[method].resize(lines_);
    for (const Rigged& one : rigs) {
      for (std::size_t w = 0; w < waters.size(); ++w) {
        std::vector<LineSeconds*> best;
        for (SecondsByMethod& there : found[w]) best.push_back(&there[method][one.line]);
        for (const RigWays& here : ways_of(one.rig, method, waters[w].water)) keep_best(at[w], here, best);
      }
    }
  }
  return found;
}

}  // namespace floatwright
