#include "engine/choice/rig_in_water.hpp"

#include <algorithm>
#include <cmath>

#include "engine/choice/cast_time.hpp"
#include "engine/choice/limits.hpp"
#include "engine/choice/pace.hpp"
#include "engine/choice/scatter.hpp"
#include "engine/choice/score.hpp"
#include "engine/choice/seconds.hpp"
#include "engine/choice/techniques.hpp"
#include "engine/sinking/surface_hold.hpp"

namespace floatwright {
namespace {

constexpr double kMostTurbulence = 0.6;

Fishing fishing_of(const Tackle& tackle, const Rig& rig, const Technique& technique, const KnownWater& water,
                   Length cast, const Judgement& judgement) {
  Lane known;
  known.sd_ln_depth = known.sd_ln_speed = 0.0;
  Fishing fishing;
  fishing.method = technique.method;
  fishing.bed = water.bed;
  fishing.easy = easy_speed(water.temperature, judgement.pace);
  fishing.paid = cast_time(tackle.lines[rig.line].kind, sinking_part(tackle, rig), technique, cast, judgement.times);
  fishing.scatter = scatter_factors(technique, known, judgement.scatter);
  return fishing;
}

// The share of fish that take falls evenly from the full reach's height to none at the reach's end.
Length zone_top(const Zone& zone, const ZoneJudgement& judgement) {
  const double half = 0.5 * (1.0 + judgement.full_share_of_reach);
  return std::max(Length{}, zone.depth - (zone.hold + half * zone.reach));
}

// A sunk fly between the zone's top and the bed; a dry fly all the while that it drifts.
std::optional<TimeInZone> time_in_zone(const CastPath& path, Length top, Length bed, Method method) {
  std::optional<TimeInZone> time;
  for (std::size_t i = 1; i < path.samples.size(); ++i) {
    const CastSample &a = path.samples[i - 1], &b = path.samples[i];
    const Length fly = 0.5 * (a.fly_depth + b.fly_depth);
    if (method != Method::Dry && (fly < top || fly > bed)) continue;
    if (!time) time = TimeInZone{a.t, b.t, {}};
    time->to = b.t;
    time->in_all = time->in_all + (b.t - a.t);
  }
  return time;
}

Finding finding_of(const RigInWater& fished, const Judgement& judgement) {
  if (!(fished.zone.presence > 0.0)) return Finding::NoFish;
  const ScoredRig& scored = fished.scored;
  if (scored.seconds >= judgement.choice.least_seconds && scored.efficiency >= judgement.choice.least_efficiency)
    return Finding::Fishes;
  const Length near_bed = fished.zone.depth - metres(judgement.zone.near_bed_m);
  const bool deep = std::max(scored.fly_depth.best, fished.deepest_tip) >= near_bed;
  return deep ? Finding::OnTheBed : fished.in_zone ? Finding::TooFast : Finding::TooHigh;
}

void add_shape(RigInWater& fished, const Tackle& tackle, const CastSetting& setting) {
  const ScoredRig& scored = fished.scored;
  auto shape = line_shape(tackle, scored.rig, scored.technique, setting, scored.fly_depth.best);
  if (!shape) {
    fished.drawn = Absent{shape.why_absent()};
    fished.surface_hold = Absent{shape.why_absent()};
    return;
  }
  fished.surface_hold = surface_hold(tackle, scored.rig, scored.technique.method, setting, *shape);
  fished.drawn = LineOverBed{scored, fished.zone.depth, fished.zone_top, *std::move(shape)};
}

}  // namespace

double turbulence_bound(Speed sink_rate, SurfaceSpeed surface) {
  constexpr Speed kSlower = inches_per_second(1.5), kFaster = inches_per_second(3.0);
  constexpr double kOfSlower = 0.53, kOfFaster = 0.22;
  const double u = in_metres_per_second(surface), v = sink_rate.si();  // m/s
  if (!(u > 0.0) || !(v > 0.0)) return 0.0;
  const double power = std::log(kOfFaster / kOfSlower) / std::log(kFaster / kSlower);  // by ratio at 1 m/s
  return std::min(kMostTurbulence, kOfFaster * std::pow(v / u / kFaster.si(), power));
}

std::optional<std::string> way_ruled_out(const Tackle& tackle, const Rig& rig, const Technique& technique,
                                         const KnownWater& water, const Judgement& judgement) {
  const LineKind kind = tackle.lines[rig.line].kind;
  const Method method = technique.method;
  if (method == Method::Swing && !(water.surface_speed > SurfaceSpeed{}))
    return "In water that stands still nothing swings: count the line down and strip it.";
  if (method != Method::Dry && !(tackle.flies[rig.fly].sink_rate > Speed{}) && tackle.flies[rig.fly].mass)
    return "The " + tackle.flies[rig.fly].name + " floats: fish it dry, or take a fly that sinks.";
  if (method == Method::Swing && !stands(technique.platform))
    return "A swing needs a rod that stays where it is: fish it anchored or wading, or strip from a drifting boat.";
  if (method == Method::TightLine && technique.platform == Platform::Drifting)
    return "A tight line is led past the rod: fish it anchored, held or wading.";
  if (method == Method::Strip && kind == LineKind::LoopedHead)
    return "A looped head is not stripped: the joint of its tip catches in the guides.";
  if (method == Method::Swing && technique.mending != Mending::Tight &&
      mends(kind, method, drift_limits(judgement)) < 1.0)
    return "This line sinks all along and can't be mended: swing it tight.";
  if (auto verdict = rig_verdict(tackle, rig, method); verdict.ruled_out) return verdict.ruled_out;
  const double pace = boat_speed(technique.platform, water.boat_lane, water.surface_speed, judgement).si();
  const bool outruns = pace > judgement.boat.most_strip_pace * in_metres_per_second(water.surface_speed);
  if (method == Method::Strip && outruns)
    return "The boat outruns the water that is fished and kills a strip: hold it or anchor.";
  return std::nullopt;
}

Measured<RigInWater> rig_in_water(const Tackle& tackle, const Rig& rig, const Technique& technique,
                                  const KnownWater& water, Length cast, const Judgement& judgement) {
  const Temperature warmth = water.temperature ? *water.temperature : celsius(10.0);
  const auto tabled = tabled_water(water.depth, water.surface_speed, water.profile, warmth);
  if (!tabled) return Absent{tabled.why_absent()};
  const Length thrown = cast_length(tackle.lines[rig.line].kind, cast, judgement.techniques);
  const DriftLimits limits = drift_limits(judgement);
  CastSetting setting{*tabled, boat_speed(technique.platform, water.boat_lane, water.surface_speed, judgement),
                      thrown,  rod_length(tackle, rig),
                      limits,  {}};
  auto path = std::move(cast_paths(tackle, rig, {&technique, 1}, setting).front());
  if (!path) return Absent{path.why_absent()};
  if (technique.method == Method::Indicator) setting.leader_set = SetLeader{path->indicator_to_fly, {}};

  RigInWater fished;
  fished.zone = zone({water.depth, water.surface_speed, water.profile, water.bed, water.temperature, Absent{}},
                     technique.method, judgement.zone);
  const FishedCase known{&*path, fished.zone};
  const auto found =
      effective_seconds(seconds_of(fishing_of(tackle, rig, technique, water, thrown, judgement), known, judgement));
  fished.scored = scored_rig({rig, technique}, *path, found, {water.depth, water.depth, water.depth}, judgement);
  fished.zone_top = zone_top(fished.zone, judgement.zone);
  fished.in_zone =
      time_in_zone(*path, fished.zone_top, water.depth - metres(judgement.zone.near_bed_m), technique.method);
  for (const CastSample& sample : path->samples) fished.deepest_tip = std::max(fished.deepest_tip, sample.tip_depth);
  fished.turbulence = turbulence_bound(sinking_part(tackle, rig).sink_rate, water.surface_speed);
  add_shape(fished, tackle, setting);
  fished.path = *std::move(path);
  fished.finding = finding_of(fished, judgement);
  return fished;
}

}  // namespace floatwright
