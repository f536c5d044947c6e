#pragma once
// Discharge at the lower end of every reach and every grid step, in three cases: Muskingum-Cunge down the graph, closed
// on the gauges (lateral inflow per gauge-bounded stretch as a 24 h mean), drainage-area ratio past the last gauge.
// Mass is exact to round-off in each case. Sources: Cunge 1969; Ponce, Engineering Hydrology; model in
// docs/equations.md.
#include <string>
#include <vector>

#include "engine/forecast/outlook.hpp"
#include "engine/river/graph.hpp"
#include "engine/routing/flow_source.hpp"

namespace floatwright {

using FlowRows = std::vector<std::vector<Discharge>>;  // [reach][grid step]

struct DamFront {  // the half-way point of a change in release, at one place downstream
  std::size_t dam = 0;
  RiverPlace place;
  std::string place_name;
  Discharge before, after;
  Instant leaves{}, earliest{}, expected{}, latest{};
  bool seen_at_gauge = false;  // by the first gauge below the dam, its leaving reckoned back from there; else as typed
};

struct RiverFlows {
  TimeGrid grid;
  PerCase<FlowRows> flow;
  std::vector<bool> known;         // by reach: false where no gauge can speak for it
  std::vector<FlowSource> source;  // by reach
  // By River::gauges: the dam whose typed releases its forecast is, routed down to it, and not its own earlier days.
  std::vector<std::optional<std::size_t>> follows_dam;
  std::vector<DamFront> fronts;
  std::vector<std::string> doubts;  // sentences to print: a gauge that disagrees, a ratio out of range
};

[[nodiscard]] RiverFlows river_flows(const River& river, const RiverGraph& graph,
                                     const std::vector<GaugeOutlook>& outlooks,  // by River::gauges index
                                     const TimeGrid& grid, Instant now);

// The flow of one reach at an instant, per case.
[[nodiscard]] PerCase<Discharge> flow_at(const RiverFlows& flows, std::size_t reach, Instant t);

}  // namespace floatwright
