#include "engine/river/graph.hpp"

#include <algorithm>
#include <boost/graph/compressed_sparse_row_graph.hpp>
#include <boost/graph/strong_components.hpp>
#include <boost/graph/topological_sort.hpp>

#include "engine/river/flow_order.hpp"
#include "engine/river/reaches.hpp"
#include "engine/river/stations.hpp"

namespace floatwright {
namespace {

// From a piece to those that feed it.
using Upstream = boost::compressed_sparse_row_graph<boost::directedS>;

Upstream upstream_graph(std::size_t pieces, const std::vector<FlowEdge>& edges) {
  std::vector<FlowEdge> against;
  against.reserve(edges.size());
  for (const auto& [from, into] : edges) against.emplace_back(into, from);
  return {boost::edges_are_unsorted_multi_pass, against.begin(), against.end(), pieces};
}

// Pieces that share a strong component with another one, or feed themselves.
std::vector<std::size_t> pieces_on_circles(const Upstream& graph, const std::vector<FlowEdge>& edges) {
  std::vector<std::size_t> component(num_vertices(graph));
  const auto count = boost::strong_components(
      graph, boost::make_iterator_property_map(component.begin(), get(boost::vertex_index, graph)));
  std::vector<std::size_t> size(count, 0);
  for (const auto c : component) ++size[c];
  for (const auto& [from, into] : edges) {
    if (from == into) ++size[component[from]];
  }
  std::vector<std::size_t> found;
  for (std::size_t i = 0; i < component.size(); ++i) {
    if (size[component[i]] > 1) found.push_back(i);
  }
  return found;
}

std::vector<Reach> reordered(const std::vector<Reach>& pieces, const std::vector<std::size_t>& order,
                             const std::vector<FlowEdge>& edges) {
  std::vector<std::size_t> position(pieces.size());
  std::vector<Reach> reaches;
  for (std::size_t i = 0; i < order.size(); ++i) {
    position[order[i]] = i;
    reaches.push_back(pieces[order[i]]);
  }
  for (const auto& [from, into] : edges) reaches[position[into]].upstream.push_back(position[from]);
  for (auto& reach : reaches) std::ranges::sort(reach.upstream);
  return reaches;
}

}  // namespace

// Depth first against the current, so that what feeds a piece stands close before it.
FlowOrder flow_order(std::size_t pieces, const std::vector<FlowEdge>& edges) {
  const Upstream graph = upstream_graph(pieces, edges);
  FlowOrder result;
  result.order.reserve(pieces);
  try {
    boost::topological_sort(graph, std::back_inserter(result.order));
  } catch (const boost::not_a_dag&) {
    return {{}, pieces_on_circles(graph, edges)};
  }
  return result;
}

RiverGraph river_graph(const River& river) {
  RiverGraph graph;
  graph.stations = river_stations(river);
  auto pieces = cut_reaches(river, graph.stations);
  // A side channel that runs uphill is a reported error; without it the rest of the river still has an order.
  std::erase_if(pieces, [](const Reach& piece) { return piece.from < piece.to; });
  fill_drainage_areas(river, pieces);
  const auto edges = flow_edges(pieces);
  graph.reaches = reordered(pieces, flow_order(pieces.size(), edges).order, edges);
  graph.gauge_reach.resize(river.gauges.size());
  for (std::size_t i = 0; i < graph.reaches.size(); ++i) {
    if (const auto gauge = graph.reaches[i].gauge_at_end) graph.gauge_reach[*gauge] = i;
  }
  return graph;
}

std::vector<std::size_t> RiverGraph::between(RiverPlace from, RiverPlace to) const {
  std::vector<std::size_t> found;
  for (std::size_t i = 0; i < reaches.size(); ++i) {
    const Reach& reach = reaches[i];
    const bool overlaps =
        reach.to < from && reach.from > to && !same_place(reach.to, from) && !same_place(reach.from, to);
    if (reach.main_thread && overlaps) found.push_back(i);
  }
  return found;
}

std::optional<std::size_t> RiverGraph::at(RiverPlace place) const {
  std::optional<std::size_t> last;
  for (std::size_t i = 0; i < reaches.size(); ++i) {
    const Reach& reach = reaches[i];
    if (!reach.main_thread) continue;
    if (same_place(reach.from, place) || (reach.from > place && reach.to < place && !same_place(reach.to, place)))
      return i;
    last = i;
  }
  return last && same_place(reaches[*last].to, place) ? last : std::nullopt;
}

const std::vector<Water>& waters_of(const River& river, const Reach& reach) {
  static const std::vector<Water> kNobodyDescribedIt;
  if (reach.named_reach && !river.reaches[*reach.named_reach].waters.empty()) {
    return river.reaches[*reach.named_reach].waters;
  }
  return reach.note ? river.notes[*reach.note].waters : kNobodyDescribedIt;
}

Bed bed_of(const River& river, const Reach& reach) {
  return reach.named_reach ? river.reaches[*reach.named_reach].bed : Bed::Unknown;
}

}  // namespace floatwright
