#include "engine/sinking/drag_free.hpp"

#include <algorithm>

namespace floatwright {
namespace {

constexpr Length kDriftPerMend = metres(1.5);
constexpr Duration kLongest = seconds(120.0);

}  // namespace

double hold(Platform platform) {
  switch (platform) {
    case Platform::Drifting:
      return 0.0;
    case Platform::Held:
      return 0.35;
    case Platform::Anchored:
    case Platform::Wading:
      return 1.0;
  }
  return 1.0;
}

int mends(LineKind kind) {
  switch (kind) {
    case LineKind::FullSinking:
      return 0;
    case LineKind::SinkingTip:
    case LineKind::ClearTip:
    case LineKind::LoopedHead:
      return 1;
    case LineKind::FloatingWithSinkingLeader:
      return 2;
    case LineKind::Floating:
    case LineKind::NymphTaper:
    case LineKind::DoubleTaper:
    case LineKind::ShootingHead:
    case LineKind::ThinNymphLine:
    case LineKind::MonoRig:
      return 3;
  }
  return 0;
}

Duration drag_free_time(int mends, double hold, SurfaceSpeed surface) {
  const double difference = (0.25 * hold + 0.10 * (1.0 - hold)) * in_metres_per_second(surface);  // m/s
  const double drift = (1.0 + mends) * in_metres(kDriftPerMend);                                  // m
  return difference * in_seconds(kLongest) <= drift ? kLongest : seconds(drift / difference);
}

}  // namespace floatwright
