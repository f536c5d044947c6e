#include "engine/choice/seconds.hpp"

#include <algorithm>
#include <cmath>
#include <optional>
#include <span>

#include "engine/choice/by_kind.hpp"
#include "engine/choice/pace.hpp"
#include "engine/choice/share_by_height.hpp"
#include "engine/sinking/abreast.hpp"

namespace floatwright {
namespace {

namespace stdx = std::experimental;
using Members = stdx::native_simd<double>;  // scatter members side by side

// A stretch of time in which the fly is taken to stand still: pace does not depend on the scatter, depth does.
struct Slice {
  double dt = 0.0;                 // s
  double fly = 0.0, lowest = 0.0;  // m below the surface, no scatter; of the fly, and of the lower of fly and tip
  double pace = 0.0;               // s, 0 to 1
  // Once something touches the bed: the chance that it has not snagged at the end, and the time fished till it does, s.
  double unsnagged = 1.0, till_snag = 0.0;
};

// A cast in its slices, and what the water makes of a depth.
struct CastInWater {
  std::vector<Slice> slices;
  std::optional<ShareByHeight> sunk;  // none: the fly is on the surface
  double on_top = 0.0;                // w there
  std::size_t first = 0;              // slice in which a fly may be taken or snag; before it no member's is deep enough
  double depth = 0.0, touching = 0.0;  // m, and from where on something touches the bed
  double deepest = HUGE_VAL;           // m, of the fly: an indicator's is never deeper than its leader

  template <class Real>
  [[nodiscard]] Real take(const Real& fly) const {
    return sunk ? sunk->at(depth - fly) : Real(on_top);
  }
};

struct Sums {
  double effective = 0.0, fished = 0.0;  // integrals of w s S and of S, s
  double snagged = 0.0;                  // 1 - S at the end
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
  result.resize(samples.size() - 1);
  for (std::size_t i = 0; i < result.size(); ++i) {
    const CastSample state = between(samples[i], samples[i + 1]);
    Slice& slice = result[i];
    slice.dt = slice.till_snag = in_seconds(samples[i + 1].t - samples[i].t);
    slice.fly = in_metres(state.fly_depth);
    slice.lowest = in_metres(std::max(state.fly_depth, state.tip_depth));
    slice.pace = share_of_pace(state, fishing.method, fishing.easy, judgement.pace);
  }
  return result;
}

constexpr double kAsLong = 1e-9;  // of a slice's time, by which rounding makes another longer

CastInWater cast_in_water(const Fishing& fishing, const FishedCase& fished, const Judgement& judgement) {
  CastInWater cast;
  cast.slices = slices(fishing, fished, judgement);
  cast.depth = in_metres(fished.zone.depth);
  cast.touching = cast.depth - judgement.snag.within_m;
  if (fishing.method == Method::Indicator && fished.path) cast.deepest = in_metres(fished.path->indicator_to_fly);
  if (fishing.method == Method::Dry) {
    cast.on_top = share_on_top(fished.zone, fishing.hatch, judgement.zone);
    return cast;
  }
  cast.sunk.emplace(fished.zone, judgement.zone);
  const double rate = by_bed(judgement.snag.rate_per_s, fishing.bed);  // 1/s
  const double most = fishing.scatter.empty() ? 0.0 : std::ranges::max(fishing.scatter);
  bool reached = false;
  double dt = 0.0, unsnagged = 1.0;  // s, of a slice that touches: nearly all are as long as the one before
  for (Slice& slice : cast.slices) {
    const double deepest_member = std::min(cast.deepest, slice.lowest * most);  // m
    const bool touches = deepest_member >= cast.touching;
    reached = reached || touches || cast.sunk->may_be_taken(cast.depth - deepest_member);
    cast.first += reached ? 0 : 1;
    if (!touches || !(rate > 0.0)) continue;
    if (!(std::abs(slice.dt - dt) <= kAsLong * dt)) dt = slice.dt, unsnagged = std::exp(-rate * dt);
    slice.unsnagged = unsnagged;
    slice.till_snag = (1.0 - unsnagged) / rate;
  }
  return cast;
}

// Over all scatter members, as many at once as there are lanes.
Sums sums_of_members(const CastInWater& cast, const std::vector<double>& scatter) {
  Sums sums;
  const Members touching = cast.touching;
  const auto deep_enough = std::span(cast.slices).subspan(cast.first);
  double sinking = 0.0;  // s
  for (const Slice& slice : std::span(cast.slices).first(cast.first)) sinking += slice.dt;
  for (std::size_t first = 0; first < scatter.size(); first += Members::size()) {
    const std::size_t count = std::min(Members::size(), scatter.size() - first);
    const Members factor([&](std::size_t lane) { return scatter[first + std::min(lane, count - 1)]; });
    Members effective = 0.0, fished = sinking, unsnagged = 1.0;
    for (const Slice& slice : deep_enough) {
      const Members fly = stdx::min(Members(cast.deepest), slice.fly * factor);        // m
      const Members lowest = stdx::min(Members(cast.deepest), slice.lowest * factor);  // m
      Members left = 1.0, fished_dt = slice.dt;
      where(lowest >= touching, left) = slice.unsnagged;
      where(lowest >= touching, fished_dt) = slice.till_snag;
      const Members fished_s = unsnagged * fished_dt;
      unsnagged *= left;
      effective += cast.take(fly) * (slice.pace * fished_s);
      fished += fished_s;
    }
    for (std::size_t lane = 0; lane < count; ++lane) {
      sums.effective += effective[lane];
      sums.fished += fished[lane];
      sums.snagged += 1.0 - unsnagged[lane];
    }
  }
  return sums;
}

// Mean depth while the fly fishes; where it never does, while it is paced right; else while it is out.
Length depth_while_fishing(const CastInWater& cast) {
  double best = 0, best_t = 0, paced = 0, paced_t = 0, out = 0, out_t = 0;  // m s, s
  for (const Slice& slice : cast.slices) {
    const double y = std::min(slice.fly, cast.depth);  // m
    const double pace_t = slice.pace * slice.dt;
    const double best_dt = pace_t * cast.take(Alone(slice.fly))[0];
    best += y * best_dt, best_t += best_dt;
    paced += y * pace_t, paced_t += pace_t;
    out += y * slice.dt, out_t += slice.dt;
  }
  if (best_t > 0) return metres(best / best_t);
  if (paced_t > 0) return metres(paced / paced_t);
  return out_t > 0 ? metres(out / out_t) : metres(0);
}

// No chance of snagging leaves more: of a cast that is given up at some moment, all until then taken as well as can be.
double most_seconds(const CastInWater& cast, double paid) {
  const double most = cast.sunk ? cast.sunk->most() : cast.on_top;
  double best = 0.0, taken = 0.0, minute = paid;
  for (std::size_t i = 0; i < cast.slices.size(); ++i) {
    const Slice& slice = cast.slices[i];
    minute += slice.dt;
    if (i < cast.first) continue;
    taken += most * slice.pace * slice.dt;
    if (taken > best * minute) best = taken / minute;
  }
  return 60.0 * best;
}

CaseSeconds seconds_in(const CastInWater& cast, const Fishing& fishing, const SnagJudgement& snag) {
  const Sums sums = sums_of_members(cast, fishing.scatter);
  const double members = static_cast<double>(std::max<std::size_t>(1, fishing.scatter.size()));
  double paced = 0, out = 0;  // s
  for (const Slice& slice : cast.slices) paced += slice.pace * slice.dt, out += slice.dt;

  const double paid = in_seconds(fishing.paid);  // s
  const double minute = paid + (sums.fished + snag.cost_s * sums.snagged) / members, ideal_minute = paid + out;
  CaseSeconds result;
  if (minute > 0) result.seconds = 60.0 * (sums.effective / members) / minute;
  if (ideal_minute > 0) result.ideal = 60.0 * paced / ideal_minute;
  result.snag_per_cast = sums.snagged / members;
  return result;
}

}  // namespace

CaseSeconds seconds_of(const Fishing& fishing, const FishedCase& fished, const Judgement& judgement) {
  const CastInWater cast = cast_in_water(fishing, fished, judgement);
  CaseSeconds result = seconds_in(cast, fishing, judgement.snag);
  result.fly_depth = depth_while_fishing(cast);
  return result;
}

std::optional<CaseSeconds> seconds_over(double beaten, const Fishing& fishing, const FishedCase& fished,
                                        const Judgement& judgement) {
  const CastInWater cast = cast_in_water(fishing, fished, judgement);
  if (most_seconds(cast, in_seconds(fishing.paid)) <= beaten) return std::nullopt;
  return seconds_in(cast, fishing, judgement.snag);
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
  return {
      known.seconds, efficiency_of(known), known.snag_per_cast, {known.fly_depth, known.fly_depth, known.fly_depth}};
}

}  // namespace floatwright
