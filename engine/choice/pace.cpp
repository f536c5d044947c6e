#include "engine/choice/pace.hpp"

#include <algorithm>
#include <cmath>

namespace floatwright {
namespace {

double undragged(double drag_m_s, const PaceJudgement& judgement) {
  const double halves = drag_m_s / judgement.drag_half_m_s;
  return 1.0 / (1.0 + halves * halves);
}

double swimming(const CastSample& sample, Speed easy, const PaceJudgement& judgement) {
  const Speed pace = std::min(sample.over_ground, sample.through_water);
  if (pace <= easy) return 1.0;
  const double over = in_metres_per_second(pace - easy) / judgement.swim_fall_m_s;
  return std::exp(-over * over);
}

}  // namespace

Speed easy_speed(const Measured<Temperature>& temperature, const PaceJudgement& judgement) {
  const double warmth = in_celsius(temperature ? *temperature : celsius(10.0));
  return metres_per_second(judgement.swim_m_s * read(judgement.swim_by_temperature, warmth));
}

double share_of_pace(const CastSample& sample, Method method, Speed easy, const PaceJudgement& judgement) {
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
