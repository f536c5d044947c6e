#include "engine/water/lane.hpp"

#include <algorithm>
#include <cmath>
#include <vector>

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

// Why the surface's law does not know every flow asked for and noted; empty: it does.
std::string unknown_height(const SurfaceLaw& surface, const LaneLaw& law, const PerCase<Discharge>& flow) {
  std::vector<Discharge> flows{flow.low, flow.middle, flow.high};
  for (const WaterNote& note : law.notes) flows.push_back(note.at_flow);
  for (const Discharge q : flows) {
    if (const auto height = surface_height(surface, q); !height.has_value()) return height.why_absent();
  }
  return {};
}

std::optional<KnownFlows> beyond_channel(const Channel& channel, const PerCase<Discharge>& flow) {
  const bool known = channel.least < channel.most;
  if (!known || (flow.low >= channel.least && flow.high <= channel.most)) return std::nullopt;
  return KnownFlows{KnownFlows::Of::Channel, channel.least, channel.most};
}

std::optional<KnownFlows> rated(const Rating* rating) {
  if (rating == nullptr || rating->points.empty()) return std::nullopt;
  return KnownFlows{KnownFlows::Of::Rating, rating->points.front().flow, rating->points.back().flow};
}

}  // namespace

Measured<Lane> lane(const Water& water, const Channel& channel, const PerCase<Discharge>& flow,
                    const SurfaceLaw& surface) {
  auto law = lane_law(water, channel);
  if (!law) return Absent{"nobody described this water"};
  if (!is_known(flow)) return Absent{"the flow here is unknown or none"};
  auto beyond = beyond_channel(channel, flow);
  if (!surface.empty()) {
    const std::string unknown = unknown_height(surface, *law, flow);
    if (!unknown.empty() && surface.sections != nullptr) return Absent{unknown};
    if (unknown.empty()) law = lane_law(water, channel, surface);
    if (const auto flows = rated(surface.rating); flows && !unknown.empty()) beyond = flows;
  }

  const WaterNote& nearest = nearest_note(*law, flow.middle);
  const double ratio = flow.middle / nearest.at_flow;
  const Scatter scatter = scatter_of(nearest.source);
  Lane result;
  result.depth = each_case(flow, [&](Discharge q) { return lane_depth(*law, q); });
  result.surface_speed = each_case(flow, [&](Discharge q) { return lane_speed(*law, q); });
  result.source = nearest.source;
  result.noted_at = nearest.at_flow;
  result.far_from_note = ratio < kFarBelow || ratio > kFarAbove;
  result.beyond = beyond;
  result.sd_ln_depth = scatter.depth * (result.far_from_note ? 2.0 : 1.0);
  result.sd_ln_speed = scatter.speed * (result.far_from_note ? 2.0 : 1.0);
  return result;
}

}  // namespace floatwright
