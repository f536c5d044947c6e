#pragma once
// Which piece of river comes before which: the topological order of "water runs from a into b". Written in graph.cpp,
// beside all other use of Boost.Graph.
#include <cstddef>
#include <utility>
#include <vector>

namespace floatwright {

using FlowEdge = std::pair<std::size_t, std::size_t>;  // water runs from first into second

struct FlowOrder {
  // Every piece after all that feed it, and close after them; empty when water would run in a circle.
  std::vector<std::size_t> order;
  std::vector<std::size_t> circle;  // pieces on circles, ascending; empty when there are none
};

[[nodiscard]] FlowOrder flow_order(std::size_t pieces, const std::vector<FlowEdge>& edges);

}  // namespace floatwright
