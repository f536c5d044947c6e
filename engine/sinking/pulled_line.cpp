#include "engine/sinking/pulled_line.hpp"

#include <algorithm>
#include <cmath>

namespace floatwright {
namespace {

// Judgement.
constexpr double kTangentialDrag = 0.012;  // on the wetted area
constexpr Fineness kCoarse{
    3, 4, 24};  // the body is as long as may be fed; fly depth within 0.3 % in the mean of far finer steps
constexpr double kMostFed = 2.0;  // line out with what is fed, over the cast

double sign_of(double value) { return value < 0.0 ? -1.0 : 1.0; }

}  // namespace

Measured<PulledLine> pulled_line(const Tackle& tackle, const Rig& rig, Method method, const CastSetting& setting) {
  const TabledWater& water = setting.water;
  const auto hung = hung_weight(tackle.flies[rig.fly], rig.shot, water.properties);
  if (!hung) return Absent{hung.why_absent()};
  const auto line = rigged_line(tackle, rig, method, setting.cast);
  if (!line) return Absent{line.why_absent()};
  if (!(setting.cast > line->least_out)) return Absent{"the cast is no longer than the line that stays out"};
  const SinkingPart sinking = sinking_part(tackle, rig);
  const UpwardLine upward(parts_out(*line, kMostFed * setting.cast), hung->towed, water.properties, water.stream,
                          kTangentialDrag, SurfaceEnd::BodyPulledUnder, kCoarse);
  return PulledLine{*line,
                    *hung,
                    &water,
                    upward,
                    setting.boat,
                    water.stream.at_surface() - setting.boat,
                    sinking.sink_rate,
                    line->sinking ? line->sinking->length : line->leader.length,
                    sinking.whole_line};
}

LineVelocity tight_velocity(const PulledLine& line, const Moment& at) {
  const double past = line.past.si(), strip = at.strip.si();  // m/s
  const double led = kBellyLead * std::abs(past) * at.sine;   // m/s
  return {metres_per_second(line.boat.si() + sign_of(past) * (led * at.sine - strip * at.cosine)),
          metres_per_second(-led * at.cosine - strip * at.sine)};
}

Speed relative_speed(const PulledLine& line, const Moment& at) {
  const double past = std::abs(line.past.si());                                          // m/s
  const double along = past * at.cosine + at.strip.si(), across = 0.5 * past * at.sine;  // m/s
  return metres_per_second(std::sqrt(along * along + across * across));
}

}  // namespace floatwright
