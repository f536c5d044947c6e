#include "engine/sinking/line_part.hpp"

namespace floatwright {

EndWeights end_weights(const LinePart& part, const WaterProperties& water) {
  if (!part.sink_rate_end && !part.sink_rate_butt) {
    const ForcePerLength w = weight_for_density(part.density, part.diameter, water);
    return {w, w};
  }
  const Speed low = part.sink_rate_end ? *part.sink_rate_end : *part.sink_rate_butt;
  const Speed high = part.sink_rate_butt ? *part.sink_rate_butt : low;
  return {weight_for_rate(low, part.diameter, water), weight_for_rate(high, part.diameter, water)};
}

Area sinking_drag_area(Force weight_in_water, Speed rate, Density water) {
  const double v = rate.si();  // m/s
  return square_metres(2.0 * weight_in_water.si() / (water.si() * v * v));
}

}  // namespace floatwright
