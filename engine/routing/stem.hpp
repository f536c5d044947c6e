#pragma once
// The stem as one thread of reaches, and where on it something is known: gauges, and dams whose releases are typed.
// Node k is the upper end of the k-th reach and the lower end of the one above; the last node is the end of the river.
// A side channel carries a share of the stem's flow beside it, with the stem's travel time.
#include <array>
#include <optional>
#include <string>
#include <vector>

#include "engine/forecast/outlook.hpp"
#include "engine/river/graph.hpp"

namespace floatwright {

using CaseSeries = PerCase<std::vector<Discharge>>;  // one flow by step
using CaseOf = std::vector<Discharge> CaseSeries::*;
inline constexpr std::array<CaseOf, 3> kCases{&CaseSeries::low, &CaseSeries::middle, &CaseSeries::high};

struct Stem {
  std::vector<std::size_t> reaches;  // main thread, downstream; indices into RiverGraph::reaches

  [[nodiscard]] std::size_t nodes() const { return reaches.size() + 1; }
};
[[nodiscard]] Stem stem_of(const RiverGraph& graph);
[[nodiscard]] RiverPlace place_of(const RiverGraph& graph, const Stem& stem, std::size_t node);
// The node at a place, to a metre; none between stations.
[[nodiscard]] std::optional<std::size_t> node_at(const RiverGraph& graph, const Stem& stem, RiverPlace place);

// A node whose flow is known by itself.
struct Anchor {
  std::size_t node = 0;
  std::string name;                  // "gauge ferry", "the releases of Heron Dam"
  std::optional<std::size_t> gauge;  // index into River::gauges; none: a dam's releases
  std::optional<Area> drainage_area;
  CaseSeries flow;  // on the fine grid
  Instant forecast_from{};
  FlowMethod method = FlowMethod::None;
  std::optional<std::size_t> dam{};  // index into River::dams: whose releases these are, or that the gauge follows

  [[nodiscard]] bool follows_schedule() const { return method == FlowMethod::Schedule; }
};

// From one node down to another: at most one anchor at either end, none inside.
struct StemStretch {
  std::size_t from = 0, to = 0;
  std::optional<std::size_t> top, bottom;  // indices into the anchors
};

// All anchors, downstream. Of a dam and a gauge close below it, the gauge; its own outlook follows the schedule.
[[nodiscard]] std::vector<Anchor> anchors_of(const River& river, const RiverGraph& graph, const Stem& stem,
                                             const std::vector<GaugeOutlook>& outlooks, const TimeGrid& grid,
                                             const TimeGrid& fine, Instant now);

// Cut at every anchor and every dam: what is known on one side of a dam says nothing of the other.
[[nodiscard]] std::vector<StemStretch> stretches_of(const River& river, const RiverGraph& graph, const Stem& stem,
                                                    const std::vector<Anchor>& anchors);

// Straight lines between the steps of the coarser grid.
[[nodiscard]] std::vector<Discharge> refined(const std::vector<Discharge>& flow, const TimeGrid& grid,
                                             const TimeGrid& fine);

}  // namespace floatwright
