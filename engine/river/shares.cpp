#include "engine/river/shares.hpp"

#include <algorithm>

#include "engine/river/stations.hpp"

namespace floatwright {
namespace {

bool runs_beside(const SideChannel& side, const Reach& reach) {
  const bool leaves_above = side.leaves > reach.from || same_place(side.leaves, reach.from);
  const bool returns_below = side.returns < reach.to || same_place(side.returns, reach.to);
  return leaves_above && returns_below;
}

}  // namespace

double side_share(const SideChannel& side, Discharge whole_flow) {
  const auto& rows = side.share_by_flow;
  if (rows.empty()) return 0.0;
  const auto above = std::ranges::find_if(rows, [&](const FlowShare& row) { return row.at_flow >= whole_flow; });
  if (above == rows.begin()) return above->share;
  if (above == rows.end()) return rows.back().share;
  const auto& lower = *(above - 1);
  const double along = (whole_flow - lower.at_flow) / (above->at_flow - lower.at_flow);
  return lower.share + along * (above->share - lower.share);
}

double own_share(const River& river, const Reach& reach, Discharge whole_flow) {
  if (reach.side_channel) return side_share(river.side_channels[*reach.side_channel], whole_flow);
  double rest = 1.0;
  for (const auto& side : river.side_channels) {
    if (runs_beside(side, reach)) rest -= side_share(side, whole_flow);
  }
  return std::max(kLeastOfTheStem, rest);
}

}  // namespace floatwright
