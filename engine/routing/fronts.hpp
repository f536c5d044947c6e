#pragma once
// When the change of a dam's release reaches each access, stop, wading spot and hazard below it: the half-way point of
// the change, sum of L/c, with c at the mean of the flows before and after for a rise, at the higher flow for a drop
// (the lower one doubles the error or worse).
#include <vector>

#include "engine/routing/river_flows.hpp"

namespace floatwright {

// Every typed change over 5 % from 12 h before `now` to the end of the grid, down to the next dam or lake. Earliest
// 0.85 and latest 1.2 times the expected travel where the wave time is typed, 0.8 and 1.6 times where it follows from
// the channel alone, and a quarter of an hour either side at the least. All judgement.
[[nodiscard]] std::vector<DamFront> dam_fronts(const River& river, const RiverGraph& graph, const RiverFlows& flows,
                                               Instant now);

}  // namespace floatwright
