#include "engine/routing/river_flows.hpp"

#include <algorithm>

#include "engine/river/shares.hpp"
#include "engine/routing/fronts.hpp"
#include "engine/routing/mean_flow.hpp"
#include "engine/routing/stretch_flows.hpp"

namespace floatwright {
namespace {

constexpr Period kLongestRoutingStep = std::chrono::minutes{15};

// An even part of the grid's step, at most a quarter of an hour.
TimeGrid fine_grid(const TimeGrid& grid) {
  auto parts = (grid.step + kLongestRoutingStep - Period{1}) / kLongestRoutingStep;
  while (grid.step.count() % parts != 0) ++parts;
  return {grid.start, grid.step / parts, (grid.count - 1) * static_cast<std::size_t>(parts) + 1};
}

// The flow of the whole river at the lower end of every stem reach.
ReachFlows stem_flows(const RoutingInputs& in, const std::vector<StemStretch>& stretches,
                      const std::vector<StretchSources>& sources, std::vector<std::string>& doubts) {
  ReachFlows all;
  AnchorFlows anchors = anchor_flows(in.anchors);
  for (std::size_t s = 0; s < stretches.size(); ++s)
    for (auto& flow : stretch_flows(in, stretches[s], sources[s], anchors, doubts)) all.push_back(std::move(flow));
  return all;
}

std::size_t stem_index_beside(const RoutingInputs& in, const Reach& branch) {
  for (std::size_t k = 0; k < in.stem.reaches.size(); ++k)
    if (in.reach(k).to <= branch.to) return k;
  return in.stem.reaches.size() - 1;
}

// Fixed over the window: the share at the mean flow of the reach that the side channel leaves beside.
std::vector<double> side_shares(const RoutingInputs& in, const ReachFlows& stem, CaseOf c) {
  std::vector<double> shares;
  for (std::size_t i = 0; i < in.river.side_channels.size(); ++i) {
    std::size_t k = 0;
    while (k + 1 < in.stem.reaches.size() && in.reach(k).to >= in.river.side_channels[i].leaves) ++k;
    shares.push_back(side_share(in.river.side_channels[i], mean_flow(stem[k].*c)));
  }
  return shares;
}

double thread_share(const RoutingInputs& in, const Reach& reach, const std::vector<double>& shares) {
  if (reach.side_channel) return shares[*reach.side_channel];
  double left = 1.0;
  for (std::size_t i = 0; i < shares.size(); ++i) {
    const SideChannel& side = in.river.side_channels[i];
    if (reach.from - side.leaves <= metres(1.0) && side.returns - reach.to <= metres(1.0)) left -= shares[i];
  }
  return std::max(left, kLeastOfTheStem);
}

FlowRows rows_of(const RoutingInputs& in, const ReachFlows& stem, CaseOf c, const TimeGrid& grid) {
  const std::vector<double> shares = side_shares(in, stem, c);
  const auto parts = static_cast<std::size_t>(grid.step / in.fine.step);
  FlowRows rows;
  for (const Reach& reach : in.graph.reaches) {
    const std::vector<Discharge>& whole = stem[stem_index_beside(in, reach)].*c;
    const double share = thread_share(in, reach, shares);
    std::vector<Discharge> row;
    for (std::size_t i = 0; i < grid.count; ++i) row.push_back(whole[i * parts] * share);
    rows.push_back(std::move(row));
  }
  return rows;
}

void tell_sources(const RoutingInputs& in, const std::vector<StretchSources>& sources, RiverFlows& flows) {
  std::vector<ReachSource> by_stem;
  for (const StretchSources& stretch : sources) {
    by_stem.insert(by_stem.end(), stretch.reaches.begin(), stretch.reaches.end());
    flows.doubts.insert(flows.doubts.end(), stretch.doubts.begin(), stretch.doubts.end());
  }
  for (const Reach& reach : in.graph.reaches) {
    const ReachSource& source = by_stem[stem_index_beside(in, reach)];
    const bool share_typed = !reach.side_channel || !in.river.side_channels[*reach.side_channel].share_by_flow.empty();
    flows.known.push_back(source.known() && share_typed);
    flows.source.push_back(source.source);
    flows.source.back().share_of_stem = reach.side_channel.has_value();
    if (!share_typed) flows.source.back() = {.why_unknown = "nobody typed what share of the flow it takes"};
  }
}

void tell_followed_dams(const RoutingInputs& in, const std::vector<StemStretch>& stretches, RiverFlows& flows) {
  for (const Anchor& anchor : in.anchors)
    if (anchor.gauge && anchor.follows_schedule()) flows.follows_dam[*anchor.gauge] = anchor.dam;
  std::optional<std::size_t> dam;
  for (const StemStretch& stretch : stretches) {
    if (stretch.top && in.anchors[*stretch.top].follows_schedule()) dam = in.anchors[*stretch.top].dam;
    const bool routed = stretch.top && stretch.bottom && in.anchors[*stretch.bottom].method == FlowMethod::SameHour;
    if (!routed) dam.reset();
    if (routed && in.anchors[*stretch.bottom].gauge) flows.follows_dam[*in.anchors[*stretch.bottom].gauge] = dam;
  }
}

void unknown_throughout(const RiverGraph& graph, RiverFlows& flows) {
  const FlowRows none(graph.reaches.size(), std::vector<Discharge>(flows.grid.count));
  flows.flow = {none, none, none};
  flows.known.assign(graph.reaches.size(), false);
  flows.source.assign(graph.reaches.size(), {.why_unknown = "no gauge speaks for this water"});
}

}  // namespace

RiverFlows river_flows(const River& river, const RiverGraph& graph, const std::vector<GaugeOutlook>& outlooks,
                       const TimeGrid& grid, Instant now) {
  RiverFlows flows;
  flows.grid = grid;
  flows.follows_dam.resize(river.gauges.size());
  const Stem stem = stem_of(graph);
  if (stem.reaches.empty() || grid.count == 0) {
    unknown_throughout(graph, flows);
    return flows;
  }
  const TimeGrid fine = fine_grid(grid);
  const SideFlows sides = side_flows(river, graph, stem, outlooks, grid, fine);
  const std::vector<Anchor> anchors = anchors_of(river, graph, stem, outlooks, grid, fine, now);
  const std::vector<StemStretch> stretches = stretches_of(river, graph, stem, anchors);
  const RoutingInputs in{river, graph, stem, anchors, sides, fine};

  std::vector<StretchSources> sources;
  for (const StemStretch& stretch : stretches) sources.push_back(stretch_sources(in, stretch));
  flows.doubts = sides.doubts;
  tell_sources(in, sources, flows);
  const ReachFlows stem_flow = stem_flows(in, stretches, sources, flows.doubts);
  flows.flow = {rows_of(in, stem_flow, &CaseSeries::low, grid), rows_of(in, stem_flow, &CaseSeries::middle, grid),
                rows_of(in, stem_flow, &CaseSeries::high, grid)};
  tell_followed_dams(in, stretches, flows);
  flows.fronts = dam_fronts(river, graph, outlooks, flows, now);
  return flows;
}

PerCase<Discharge> flow_at(const RiverFlows& flows, std::size_t reach, Instant t) {
  const std::size_t before = flows.grid.index_before(t), after = std::min(before + 1, flows.grid.count - 1);
  const double along = duration(t - flows.grid.at(before)) / duration(flows.grid.step);
  const double share = after == before ? 0.0 : std::clamp(along, 0.0, 1.0);
  return each_case(flows.flow, [&](const FlowRows& rows) {
    return rows[reach][before] * (1.0 - share) + rows[reach][after] * share;
  });
}

}  // namespace floatwright
