#pragma once
// The flow at the lower end of every reach of a stretch, in three cases: routed down from the anchor above and closed
// on the one below, or carried from the only anchor by drainage area. Flows are of the whole river, side channels
// included.
#include <string>
#include <vector>

#include "engine/routing/stretch_routing.hpp"

namespace floatwright {

// What the anchors say. A gauge whose own outlook only repeats the same hours takes the routed releases instead, ahead
// of its newest reading, where those reach it: then its entry here is changed.
struct AnchorFlows {
  std::vector<CaseSeries> flow;  // by anchor
  std::vector<bool> follows_schedule;
};
[[nodiscard]] AnchorFlows anchor_flows(const std::vector<Anchor>& anchors);

[[nodiscard]] ReachFlows stretch_flows(const RoutingInputs& in, const StemStretch& stretch,
                                       const StretchSources& sources, AnchorFlows& anchors,
                                       std::vector<std::string>& doubts);

// By reach: the share of the stretch's unseen inflow that has entered at its lower end; by drainage area, else by
// length.
[[nodiscard]] std::vector<double> unseen_share(const RoutingInputs& in, const StemStretch& stretch);

}  // namespace floatwright
