#pragma once
// The pieces of river between stations, before they are put in downstream order: the stem from the top down, then one
// branch for each side channel whose ends lie on the stem.
#include <vector>

#include "engine/river/flow_order.hpp"
#include "engine/river/graph.hpp"

namespace floatwright {

// `upstream` is not yet filled in: see flow_edges.
[[nodiscard]] std::vector<Reach> cut_reaches(const River& river, const std::vector<Station>& stations);

// Stem piece into the next one, stem into branch, branch back into the stem. Indices into `pieces`.
[[nodiscard]] std::vector<FlowEdge> flow_edges(const std::vector<Reach>& pieces);

// Fills drainage_area at the lower end of every stem piece (see Reach).
void fill_drainage_areas(const River& river, std::vector<Reach>& pieces);

}  // namespace floatwright
