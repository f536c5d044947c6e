#pragma once
// What joins the stem and what is taken out of it: tributaries by their gauge (or a natural gauge near in drainage
// area), diversions in their season.
#include <string>
#include <vector>

#include "engine/routing/stem.hpp"

namespace floatwright {

struct Joining {
  std::size_t node = 0;
  std::string name;
  std::optional<Area> drainage_area;
  Measured<PerCase<std::vector<Discharge>>> flow;  // on the fine grid
};
struct Taking {
  std::size_t node = 0;
  std::string name;
  std::vector<Discharge> flow;  // on the fine grid; zero out of season
};
struct SideFlows {
  std::vector<Joining> joining;
  std::vector<Taking> taking;
  std::vector<std::string> doubts;
};

[[nodiscard]] SideFlows side_flows(const River& river, const RiverGraph& graph, const Stem& stem,
                                   const std::vector<GaugeOutlook>& outlooks, const TimeGrid& grid,
                                   const TimeGrid& fine);

// The flow below node `node`: what comes, plus what joins, less what is taken (never below zero).
// `c` picks the case. Sets `short_of_water` where a diversion takes more than there is.
using CaseOf = std::vector<Discharge> PerCase<std::vector<Discharge>>::*;
[[nodiscard]] std::vector<Discharge> below_node(const SideFlows& sides, std::size_t node, CaseOf c,
                                                std::vector<Discharge> flow, bool& short_of_water);
[[nodiscard]] bool anything_at(const SideFlows& sides, std::size_t node);

}  // namespace floatwright
