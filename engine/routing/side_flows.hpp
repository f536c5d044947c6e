#pragma once
// What joins the stem and what is taken out of it: tributaries by their gauge (or a natural gauge near in drainage
// area), diversions in their season.
#include <string>
#include <vector>

#include "engine/routing/network.hpp"
#include "engine/routing/stem.hpp"

namespace floatwright {

inline constexpr double kSmallDiversion = 0.20;  // of the flow: across it a gauge still tells; judgement

struct Joining {
  std::size_t node = 0;
  std::string name;
  std::optional<Area> drainage_area;
  Measured<CaseSeries> flow;  // on the fine grid
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

// Below node `node`: what comes, plus what joins, less what is taken (never below zero). In place; sets
// `short_of_water` where a diversion takes more than there is.
void pass_node(const SideFlows& sides, std::size_t node, const CaseRow& flow, bool& short_of_water);
// The same of means over the window.
[[nodiscard]] PerCase<Discharge> mean_below_node(const SideFlows& sides, std::size_t node, PerCase<Discharge> mean);
[[nodiscard]] bool anything_at(const SideFlows& sides, std::size_t node);

}  // namespace floatwright
