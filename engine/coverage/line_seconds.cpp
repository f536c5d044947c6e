#include "engine/coverage/line_seconds.hpp"

#include <algorithm>
#include <tuple>

#include "engine/choice/score.hpp"
#include "engine/choice/techniques.hpp"

namespace floatwright {
namespace {

WaysFished ways_of(Method method) {
  return method == Method::Swing || method == Method::Strip ? WaysFished::Pulled : WaysFished::Drifted;
}

// An indicator's leader hangs on fly, shot and rod, not on line or platform: solved once a water.
using LeaderKey = std::tuple<std::size_t, Mass, Length>;
using KnownLeaders = std::map<LeaderKey, Length>;

std::vector<Measured<CastPath>> casts_of(const Scene& scene, const RigWays& ways, KnownLeaders& leaders) {
  if (ways.techniques.front().method != Method::Indicator)
    return middle_casts(scene, ways.rig, ways.techniques, Casts::FromTables);
  const LeaderKey key{ways.rig.fly, ways.rig.shot, rod_length(scene.tackle, ways.rig)};
  const auto known = leaders.find(key);
  const auto set = known == leaders.end() ? std::nullopt : std::optional(known->second);
  auto casts = middle_casts(scene, ways.rig, ways.techniques, Casts::FromTables, set);
  if (casts.front()) leaders.emplace(key, casts.front()->indicator_to_fly);
  return casts;
}

void keep_best(const Scene& scene, const RigWays& ways, KnownLeaders& leaders, LineSeconds& best) {
  const auto casts = casts_of(scene, ways, leaders);
  for (std::size_t i = 0; i < casts.size(); ++i) {
    if (!casts[i]) continue;
    const ScoredRig scored = score_middle(scene, {ways.rig, ways.techniques[i]}, *casts[i]);
    if (scored.seconds > best.seconds) best = {scored.seconds, scored.efficiency};
  }
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

SecondsByMethod LinesAtHand::seconds_in(const WaterToFish& water, WaysFished ways) const {
  const Scene scene = scene_of(water, tackle_, preferences_, judgement_, tables_);
  const SurfaceSpeed fished = water.lane.surface_speed.middle;
  SecondsByMethod found;
  KnownLeaders leaders;
  for (const auto& [method, rigs] : rigs_) {
    if (ways_of(method) != ways) continue;
    std::vector<LineSeconds>& best = found[method];
    best.resize(lines_);
    for (const Rigged& one : rigs) {
      for (const Platform platform : water.platforms) {
        const Speed boat = boat_speed(platform, water.boat_lane.middle, fished, judgement_);
        const double speed = in_metres_per_second(fished);  // m/s
        const double pace = speed > 0.0 ? in_metres_per_second(boat) / speed : 0.0;
        const RigWays here{one.rig, techniques(method, tackle_.lines[one.rig.line].kind, platform, pace, judgement_)};
        if (!here.techniques.empty()) keep_best(scene, here, leaders, best[one.line]);
      }
    }
  }
  return found;
}

}  // namespace floatwright
