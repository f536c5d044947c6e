#include "engine/choice/seconds.hpp"

#include <algorithm>
#include <cmath>

#include "engine/choice/by_kind.hpp"
#include "engine/choice/pace.hpp"

namespace floatwright {
namespace {

// A stretch of time in which the fly is taken to stand still: pace does not depend on the scatter, depth does.
struct Slice {
  double dt;        // s
  double fly, tip;  // m below the surface, no scatter
  double pace;      // s, 0 to 1
};

struct Sums {
  double effective = 0.0, fished = 0.0;  // integrals of w s S and of S, s
  double unsnagged = 1.0;                // S at the end
};

CastSample between(const CastSample& a, const CastSample& b) {
  return {0.5 * (a.t + b.t),
          0.5 * (a.fly_depth + b.fly_depth),
          0.5 * (a.tip_depth + b.tip_depth),
          0.5 * (a.over_ground + b.over_ground),
          0.5 * (a.through_water + b.through_water),
          0.5 * (a.bearing + b.bearing)};
}

std::vector<Slice> slices(const Fishing& fishing, const FishedCase& fished, const Judgement& judgement) {
  std::vector<Slice> result;
  if (!fished.path || fished.path->samples.empty()) return result;
  const auto& samples = fished.path->samples;
  result.reserve(samples.size());
  for (std::size_t i = 1; i < samples.size(); ++i) {
    const CastSample state = between(samples[i - 1], samples[i]);
    const double pace = share_of_pace(state, fishing.method, fishing.easy, judgement.pace);
    const double dt = in_seconds(samples[i].t - samples[i - 1].t);  // s
    result.push_back({dt, in_metres(state.fly_depth), in_metres(state.tip_depth), pace});
  }
  return result;
}

double take(const Fishing& fishing, const Zone& zone, double fly_depth_m, const Judgement& judgement) {
  if (fishing.method == Method::Dry) return share_on_top(zone, fishing.hatch, judgement.zone);
  return share_at(zone, zone.depth - metres(fly_depth_m), judgement.zone);
}

Sums member(const Fishing& fishing, const FishedCase& fished, const std::vector<Slice>& cast, double scatter,
            const Judgement& judgement) {
  const double h = in_metres(fished.zone.depth);                       // m
  const double rate = by_bed(judgement.snag.rate_per_s, fishing.bed);  // 1/s
  // An indicator's fly is never deeper than its leader is long.
  const double deepest =
      fishing.method == Method::Indicator ? in_metres(fished.path->indicator_to_fly) : HUGE_VAL;  // m
  Sums sums;
  for (const Slice& slice : cast) {
    const double fly = std::min(deepest, slice.fly * scatter);  // m
    const double tip = std::min(deepest, slice.tip * scatter);  // m
    const bool touches = fishing.method != Method::Dry && h - std::max(fly, tip) <= judgement.snag.within_m;
    const double after = touches ? sums.unsnagged * std::exp(-rate * slice.dt) : sums.unsnagged;
    const double fished_s = touches && rate > 0 ? (sums.unsnagged - after) / rate : sums.unsnagged * slice.dt;  // s
    sums.effective += take(fishing, fished.zone, fly, judgement) * slice.pace * fished_s;
    sums.fished += fished_s;
    sums.unsnagged = after;
  }
  return sums;
}

// Mean depth while the fly fishes; where it never does, while it is paced right; else while it is out.
Length depth_while_fishing(const Fishing& fishing, const Zone& zone, const std::vector<Slice>& cast,
                           const Judgement& judgement) {
  double best = 0, best_t = 0, paced = 0, paced_t = 0, out = 0, out_t = 0;  // m s, s
  for (const Slice& slice : cast) {
    const double y = std::min(slice.fly, in_metres(zone.depth));  // m
    const double pace_t = slice.pace * slice.dt;
    const double best_dt = pace_t * take(fishing, zone, slice.fly, judgement);
    best += y * best_dt, best_t += best_dt;
    paced += y * pace_t, paced_t += pace_t;
    out += y * slice.dt, out_t += slice.dt;
  }
  if (best_t > 0) return metres(best / best_t);
  if (paced_t > 0) return metres(paced / paced_t);
  return out_t > 0 ? metres(out / out_t) : metres(0);
}

}  // namespace

CaseSeconds seconds_of(const Fishing& fishing, const FishedCase& fished, const Judgement& judgement) {
  const std::vector<Slice> cast = slices(fishing, fished, judgement);
  double effective = 0, spent = 0, snagged = 0;  // means over the members
  for (const double scatter : fishing.scatter) {
    const Sums sums = member(fishing, fished, cast, scatter, judgement);
    effective += sums.effective;
    spent += sums.fished + judgement.snag.cost_s * (1.0 - sums.unsnagged);
    snagged += 1.0 - sums.unsnagged;
  }
  const double members = static_cast<double>(std::max<std::size_t>(1, fishing.scatter.size()));
  double paced = 0, out = 0;  // s
  for (const Slice& slice : cast) paced += slice.pace * slice.dt, out += slice.dt;

  const double paid = in_seconds(fishing.paid);  // s
  const double minute = paid + spent / members, ideal_minute = paid + out;
  CaseSeconds result;
  if (minute > 0) result.seconds = 60.0 * (effective / members) / minute;
  if (ideal_minute > 0) result.ideal = 60.0 * paced / ideal_minute;
  result.snag_per_cast = snagged / members;
  result.fly_depth = depth_while_fishing(fishing, fished.zone, cast, judgement);
  return result;
}

EffectiveSeconds effective_seconds(const Fishing& fishing, const PerCase<FishedCase>& fished,
                                   const Judgement& judgement) {
  const CaseSeconds middle = seconds_of(fishing, fished.middle, judgement);
  // A case that cannot be fished still counts as time that could have been fished well.
  const CaseSeconds nothing{0.0, middle.ideal, 0.0, middle.fly_depth};
  const auto in_case = [&](const FishedCase& one) { return one.path ? seconds_of(fishing, one, judgement) : nothing; };
  const PerCase<CaseSeconds> cases{in_case(fished.low), middle, in_case(fished.high)};
  const auto mean = [&](double CaseSeconds::*of) {
    return kCaseWeight.low * cases.low.*of + kCaseWeight.middle * cases.middle.*of + kCaseWeight.high * cases.high.*of;
  };
  EffectiveSeconds result;
  result.seconds = mean(&CaseSeconds::seconds);
  const double ideal = mean(&CaseSeconds::ideal);
  result.efficiency = ideal > 0 ? result.seconds / ideal : 0.0;
  result.snag_per_cast = mean(&CaseSeconds::snag_per_cast);
  result.fly_depth = each_case(cases, [](const CaseSeconds& one) { return one.fly_depth; });
  return result;
}

EffectiveSeconds effective_seconds(const CaseSeconds& known) {
  const double efficiency = known.ideal > 0 ? known.seconds / known.ideal : 0.0;
  return {known.seconds, efficiency, known.snag_per_cast, {known.fly_depth, known.fly_depth, known.fly_depth}};
}

}  // namespace floatwright
