#include "engine/choice/mends.hpp"

#include <algorithm>

namespace floatwright {
namespace {

// Slower than any water worth the name: a drift past an anchored boat in still water has no end of its own.
constexpr double kStill = 1e-3;  // m/s

Duration past_the_boat(const Drift& drift, const MendsJudgement& judgement) {
  return seconds(judgement.casts_of_drift * in_metres(drift.cast) /
                 std::max(kStill, in_metres_per_second(drift.passing)));
}

Duration longest_indicator(const Drift& drift, const Judgement& judgement) {
  if (drift.platform == Platform::Drifting) return seconds(judgement.mends.longest_drift_s);
  const double count = mends(drift.kind, judgement.mends);
  return std::min(free_drift(count, drift.platform, drift.surface_speed, judgement),
                  past_the_boat(drift, judgement.mends));
}

Duration longest_dry(const Drift& drift, const Judgement& judgement) {
  const Duration free = free_drift(judgement.mends.dry, drift.platform, drift.surface_speed, judgement);
  const Duration limit = std::min(free, seconds(judgement.mends.longest_dry_s));
  return drift.platform == Platform::Drifting ? limit : std::min(limit, past_the_boat(drift, judgement.mends));
}

}  // namespace

double hold(Platform platform, const BoatJudgement& judgement) {
  switch (platform) {
    case Platform::Drifting:
      return judgement.hold_drifting;
    case Platform::Held:
      return judgement.hold_held;
    case Platform::Anchored:
    case Platform::Wading:
      return judgement.hold_anchored;
  }
  return judgement.hold_anchored;
}

double mends(LineKind kind, const MendsJudgement& judgement) {
  switch (kind) {
    case LineKind::FullSinking:
      return judgement.full_sinking;
    case LineKind::SinkingTip:
    case LineKind::LoopedHead:
    case LineKind::ClearTip:
      return judgement.sinking_tip;
    case LineKind::FloatingWithSinkingLeader:
      return judgement.sinking_leader;
    case LineKind::Floating:
    case LineKind::NymphTaper:
    case LineKind::DoubleTaper:
    case LineKind::ShootingHead:
    case LineKind::ThinNymphLine:
    case LineKind::MonoRig:
      return judgement.floating;
  }
  return judgement.full_sinking;
}

Duration free_drift(double mends, Platform platform, SurfaceSpeed speed, const Judgement& judgement) {
  const double held = hold(platform, judgement.boat);
  const double share = judgement.mends.drag_anchored * held + judgement.mends.drag_drifting * (1.0 - held);
  const double parting = std::max(kStill, share * in_metres_per_second(speed));  // m/s
  return seconds((1.0 + mends) * judgement.mends.slack_m / parting);
}

Duration longest_fishing(const Drift& drift, const Judgement& judgement) {
  const Duration longest = seconds(judgement.times.longest_cast_s);
  if (drift.method == Method::Indicator) return std::min(longest, longest_indicator(drift, judgement));
  if (drift.method == Method::Dry) return std::min(longest, longest_dry(drift, judgement));
  return longest;
}

}  // namespace floatwright
