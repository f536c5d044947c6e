#pragma once
// At what pace of the fly a fish takes it, 0 to 1. A swung or stripped fly must be slow over the ground or through the
// water, a drifted nymph must not drag; a dry fly drifts until its time is up (engine/sinking/drift_limits.hpp).
#include <algorithm>
#include <cmath>

#include "engine/choice/judgement.hpp"
#include "engine/sinking/cast_path.hpp"

namespace floatwright {

// Speed up to which a swung or stripped fly is taken fully; temperature unknown: that of 10 C.
[[nodiscard]] Speed easy_speed(const Measured<Temperature>& temperature, const PaceJudgement& judgement);

[[nodiscard]] inline double undragged(double drag_m_s, const PaceJudgement& judgement) {
  const double halves = drag_m_s / judgement.drag_half_m_s;
  return 1.0 / (1.0 + halves * halves);
}

[[nodiscard]] inline double swimming(const CastSample& sample, Speed easy, const PaceJudgement& judgement) {
  const Speed pace = std::min(sample.over_ground, sample.through_water);
  if (pace <= easy) return 1.0;
  const double over = in_metres_per_second(pace - easy) / judgement.swim_fall_m_s;
  return std::exp(-over * over);
}

// s of a sample; `easy` from easy_speed(). Asked of every sample of every cast.
[[nodiscard]] inline double share_of_pace(const CastSample& sample, Method method, Speed easy,
                                          const PaceJudgement& judgement) {
  switch (method) {
    case Method::Swing: {
      const bool hangs = std::abs(in_degrees(sample.bearing)) <= judgement.hang_down_deg;
      return swimming(sample, easy, judgement) * (hangs ? judgement.hang_down_share : 1.0);
    }
    case Method::Strip:
      return swimming(sample, easy, judgement);
    case Method::Indicator:
      return undragged(in_metres_per_second(sample.through_water), judgement);
    case Method::TightLine:
      return undragged(judgement.tight_line_drag_m_s, judgement);
    case Method::Dry:
      return 1.0;
  }
  return 0.0;
}

}  // namespace floatwright
