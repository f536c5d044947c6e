#include "engine/water/lane.hpp"

#include <algorithm>
#include <cmath>

#include "engine/water/lane_law.hpp"

namespace floatwright {
namespace {

constexpr double kFarBelow = 0.4, kFarAbove = 2.5;  // of the nearest noted flow, judgement

struct Scatter {
  double depth, speed;  // sd of the natural log, judgement
};

Scatter scatter_of(DepthSource source) {
  switch (source) {
    case DepthSource::Surveyed:
      return {0.10, 0.12};
    case DepthSource::Noted:
      return {0.15, 0.15};
    case DepthSource::Guessed:
      break;
  }
  return {0.30, 0.30};
}

bool is_known(const PerCase<Discharge>& flow) {
  return flow.low > Discharge{} && flow.middle > Discharge{} && flow.high > Discharge{} &&
         std::isfinite(flow.low.si()) && std::isfinite(flow.middle.si()) && std::isfinite(flow.high.si());
}

}  // namespace

Measured<Lane> lane(const Water& water, const Channel& channel, const PerCase<Discharge>& flow) {
  const auto law = lane_law(water, channel);
  if (!law) return Absent{"nobody described this water"};
  if (!is_known(flow)) return Absent{"the flow here is unknown or none"};

  const WaterNote& nearest = nearest_note(*law, flow.middle);
  const double ratio = flow.middle / nearest.at_flow;
  const Scatter scatter = scatter_of(nearest.source);
  Lane result;
  result.depth = each_case(flow, [&](Discharge q) { return lane_depth(*law, q); });
  result.surface_speed = each_case(flow, [&](Discharge q) { return lane_speed(*law, q); });
  result.source = nearest.source;
  result.noted_at = nearest.at_flow;
  result.far_from_note = ratio < kFarBelow || ratio > kFarAbove;
  result.sd_ln_depth = scatter.depth * (result.far_from_note ? 2.0 : 1.0);
  result.sd_ln_speed = scatter.speed * (result.far_from_note ? 2.0 : 1.0);
  return result;
}

}  // namespace floatwright
