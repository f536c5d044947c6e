#include "engine/sinking/drift_limits.hpp"

#include <algorithm>

namespace floatwright {
namespace {

double mends_of(LineKind kind, const DriftLimits& limits) {
  switch (kind) {
    case LineKind::FullSinking:
      return limits.full_sinking_mends;
    case LineKind::SinkingTip:
    case LineKind::ClearTip:
    case LineKind::LoopedHead:
      return limits.sinking_tip_mends;
    case LineKind::FloatingWithSinkingLeader:
      return limits.sinking_leader_mends;
    case LineKind::ShootingHead:
      return limits.shooting_head_mends;
    case LineKind::Floating:
    case LineKind::NymphTaper:
    case LineKind::DoubleTaper:
    case LineKind::ThinNymphLine:
    case LineKind::MonoRig:
      return limits.floating_mends;
  }
  return limits.full_sinking_mends;
}

}  // namespace

double hold(Platform platform, const DriftLimits& limits) {
  switch (platform) {
    case Platform::Drifting:
      return limits.hold_drifting;
    case Platform::Held:
      return limits.hold_held;
    case Platform::Anchored:
    case Platform::Wading:
      return limits.hold_anchored;
  }
  return limits.hold_anchored;
}

double mends(LineKind kind, Method method, const DriftLimits& limits) {
  if (method != Method::Dry) return mends_of(kind, limits);
  return kind == LineKind::ShootingHead ? std::min(limits.dry_mends, limits.shooting_head_mends) : limits.dry_mends;
}

Duration drag_free_time(double mends, Platform platform, SurfaceSpeed surface, const DriftLimits& limits) {
  const double held = hold(platform, limits);
  const Speed parting = metres_per_second((limits.drag_anchored * held + limits.drag_drifting * (1.0 - held)) *
                                          in_metres_per_second(surface));
  const Length drift = (1.0 + mends) * limits.slack;
  return parting * limits.longest_cast <= drift ? limits.longest_cast : drift / parting;
}

}  // namespace floatwright
