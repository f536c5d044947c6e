#pragma once
// When the change of a dam's release reaches each access, stop, wading spot and hazard below it: the half-way point of
// the change, sum of L/c, with c at the mean of the flows before and after for a rise, at the higher flow for a drop
// (the lower one doubles the error or worse).
#include <vector>

#include "engine/routing/river_flows.hpp"

namespace floatwright {

// Every change over 5 % from 12 h before `now` to the end of the grid, down to the next dam or lake: as typed, or, of a
// ramping dam without a typed change in these hours, as the next gauge below it has shown it (changes over 20 % of its
// flow), for the places below that gauge. Margins as in wave_travel.hpp, and a quarter of an hour either
// side at the least, of a change seen in hourly steps half a step more.
[[nodiscard]] std::vector<DamFront> dam_fronts(const River& river, const RiverGraph& graph,
                                               const std::vector<GaugeOutlook>& outlooks, const RiverFlows& flows,
                                               Instant now);

}  // namespace floatwright
