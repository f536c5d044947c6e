#pragma once
// For every reach of a stretch: whether anything can speak for its flow, what, and by what factor.
// The same in all three cases.
#include <string>
#include <vector>

#include "engine/routing/flow_source.hpp"
#include "engine/routing/side_flows.hpp"

namespace floatwright {

struct RoutingInputs {
  const River& river;
  const RiverGraph& graph;
  const Stem& stem;
  const std::vector<Anchor>& anchors;
  const SideFlows& sides;
  TimeGrid fine;

  [[nodiscard]] const Reach& reach(std::size_t stem_index) const { return graph.reaches[stem.reaches[stem_index]]; }
};

struct ReachSource {
  FlowSource source;
  bool by_area = false;
  double factor = 1.0;  // drainage-area ratio to the anchor, 1 without areas

  [[nodiscard]] bool known() const { return source.origin != FlowOrigin::Unknown; }
};

struct StretchSources {
  std::vector<ReachSource> reaches;  // of the stretch, downstream
  std::vector<std::string> doubts;
};
[[nodiscard]] StretchSources stretch_sources(const RoutingInputs& in, const StemStretch& stretch);

}  // namespace floatwright
