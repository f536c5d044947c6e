#pragma once
// The flow at the lower end of every reach of a stretch, in one case: routed down from the anchor above and closed on
// the one below, or carried from the only anchor by drainage area. Flows are of the whole river, side channels
// included.
#include <string>
#include <vector>

#include "engine/routing/stretch_sources.hpp"

namespace floatwright {

using ReachFlows = std::vector<std::vector<Discharge>>;  // [reach of the stretch or the stem][step of the fine grid]

// What the anchors say in one case. A gauge whose own outlook only repeats the same hours takes the routed releases
// instead, ahead of its newest reading, where those reach it: then its entry here is changed.
struct AnchorFlows {
  std::vector<std::vector<Discharge>> flow;  // by anchor
  std::vector<bool> follows_schedule;
};
[[nodiscard]] AnchorFlows anchor_flows(const std::vector<Anchor>& anchors, CaseOf c);

[[nodiscard]] ReachFlows stretch_flows(const RoutingInputs& in, const StemStretch& stretch, const StretchSources& sources,
                                       CaseOf c, AnchorFlows& anchors, std::vector<std::string>& doubts);

// Routed from `top` at the stretch's upper node down to the lower end of each reach, with what joins and is taken.
[[nodiscard]] ReachFlows routed_down(const RoutingInputs& in, const StemStretch& stretch, CaseOf c,
                                     const std::vector<Discharge>& top, std::vector<std::string>& doubts);

// By reach: the share of the stretch's unseen inflow that has entered at its lower end; by drainage area, else by
// length.
[[nodiscard]] std::vector<double> unseen_share(const RoutingInputs& in, const StemStretch& stretch);

}  // namespace floatwright
