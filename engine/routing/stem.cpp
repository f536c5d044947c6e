#include "engine/routing/stem.hpp"

#include <algorithm>
#include <cmath>

#include "engine/forecast/release_plan.hpp"
#include "engine/river/shares.hpp"
#include "engine/routing/mean_flow.hpp"

namespace floatwright {
namespace {

constexpr double kScheduleBand = 0.10;  // judgement, as for a gauge that follows a schedule
constexpr double kNoPlaceApart = 1.0;   // m

// A gauge beside a side channel sees the main thread alone; the share depends on the whole flow, so it is found by
// repetition.
CaseSeries whole_river(const CaseSeries& main_thread, const River& river, const Reach& reach) {
  return each_case(main_thread, [&](std::vector<Discharge> flow) {
    const Discharge seen = mean_flow(flow);
    double share = 1.0;
    for (int pass = 0; pass < 20; ++pass) share = own_share(river, reach, seen / share);
    for (Discharge& q : flow) q = q / share;
    return flow;
  });
}

std::optional<std::size_t> index_of(const River& river, const Dam* dam) {
  return dam == nullptr ? std::nullopt : std::optional<std::size_t>(dam - river.dams.data());
}

std::optional<Anchor> gauge_anchor(const River& river, const RiverGraph& graph, const Stem& stem, std::size_t gauge,
                                   const GaugeOutlook& outlook, const TimeGrid& grid, const TimeGrid& fine) {
  const GaugeSite& site = river.gauges[gauge];
  if (!site.place || !outlook.flow || outlook.flow->middle.size() != grid.count) return std::nullopt;
  const auto node = node_at(graph, stem, *site.place);
  if (!node) return std::nullopt;
  auto flow = each_case(*outlook.flow, [&](const auto& f) { return refined(f, grid, fine); });
  if (*node > 0) flow = whole_river(flow, river, graph.reaches[stem.reaches[*node - 1]]);
  Anchor anchor{*node,           "gauge " + site.id,    gauge,         site.drainage_area,
                std::move(flow), outlook.forecast_from, outlook.method};
  if (anchor.follows_schedule()) anchor.dam = index_of(river, dam_above(river, site).dam);
  return anchor;
}

// The releases as they were typed; before the first line its flow. Ten percent either way from now on.
CaseSeries release_cases(const Dam& dam, const TimeGrid& fine, Instant now) {
  CaseSeries flow;
  for (std::size_t i = 0; i < fine.count; ++i) {
    const Discharge q = release_at(dam, fine.at(i)).value_or(dam.schedule.front().flow);
    const double band = fine.at(i) > now ? kScheduleBand : 0.0;
    flow.low.push_back(q * (1.0 - band));
    flow.middle.push_back(q);
    flow.high.push_back(q * (1.0 + band));
  }
  return flow;
}

bool gauge_speaks_for(const River& river, const Dam& dam, const std::vector<Anchor>& anchors) {
  return std::any_of(anchors.begin(), anchors.end(), [&](const Anchor& anchor) {
    if (!anchor.gauge) return false;
    const GaugeSite& site = river.gauges[*anchor.gauge];
    const DamAbove above = dam_above(river, site);
    return (above.dam == &dam && above.close) || std::abs((*site.place - dam.place).si()) <= kNoPlaceApart;
  });
}

const Anchor* anchor_at(const std::vector<Anchor>& anchors, std::size_t node) {
  const auto found = std::find_if(anchors.begin(), anchors.end(), [&](const Anchor& a) { return a.node == node; });
  return found == anchors.end() ? nullptr : &*found;
}

}  // namespace

Stem stem_of(const RiverGraph& graph) {
  Stem stem;
  for (std::size_t i = 0; i < graph.reaches.size(); ++i)
    if (graph.reaches[i].main_thread) stem.reaches.push_back(i);
  return stem;
}

RiverPlace place_of(const RiverGraph& graph, const Stem& stem, std::size_t node) {
  return node == 0 ? graph.reaches[stem.reaches.front()].from : graph.reaches[stem.reaches[node - 1]].to;
}

std::optional<std::size_t> node_at(const RiverGraph& graph, const Stem& stem, RiverPlace place) {
  if (stem.reaches.empty()) return std::nullopt;
  for (std::size_t node = 0; node < stem.nodes(); ++node)
    if (std::abs((place_of(graph, stem, node) - place).si()) <= kNoPlaceApart) return node;
  return std::nullopt;
}

std::vector<Anchor> anchors_of(const River& river, const RiverGraph& graph, const Stem& stem,
                               const std::vector<GaugeOutlook>& outlooks, const TimeGrid& grid, const TimeGrid& fine,
                               Instant now) {
  std::vector<Anchor> anchors;
  for (std::size_t gauge = 0; gauge < river.gauges.size() && gauge < outlooks.size(); ++gauge)
    if (auto anchor = gauge_anchor(river, graph, stem, gauge, outlooks[gauge], grid, fine))
      anchors.push_back(std::move(*anchor));
  const std::vector<Anchor> gauges = anchors;
  for (const Dam& dam : river.dams) {
    const auto node = node_at(graph, stem, dam.place);
    if (!node || dam.schedule.empty() || gauge_speaks_for(river, dam, gauges)) continue;
    anchors.push_back(Anchor{*node, "the releases of " + dam.name, std::nullopt, std::nullopt,
                             release_cases(dam, fine, now), now, FlowMethod::Schedule, index_of(river, &dam)});
  }
  std::stable_sort(anchors.begin(), anchors.end(), [](const Anchor& a, const Anchor& b) { return a.node < b.node; });
  return anchors;
}

std::vector<StemStretch> stretches_of(const River& river, const RiverGraph& graph, const Stem& stem,
                                      const std::vector<Anchor>& anchors) {
  std::vector<bool> dam_here(stem.nodes(), false);
  for (const Dam& dam : river.dams)
    if (const auto node = node_at(graph, stem, dam.place)) dam_here[*node] = true;

  std::vector<StemStretch> stretches;
  const auto index_of = [&](const Anchor* a) {
    return a == nullptr ? std::nullopt : std::optional<std::size_t>(a - anchors.data());
  };
  StemStretch open{0, 0, index_of(anchor_at(anchors, 0)), std::nullopt};
  for (std::size_t node = 1; node < stem.nodes(); ++node) {
    const Anchor* anchor = anchor_at(anchors, node);
    const bool last = node + 1 == stem.nodes();
    if (anchor == nullptr && !dam_here[node] && !last) continue;
    open.to = node;
    if (!dam_here[node]) open.bottom = index_of(anchor);
    stretches.push_back(open);
    open = {node, node, index_of(anchor), std::nullopt};
  }
  return stretches;
}

std::vector<Discharge> refined(const std::vector<Discharge>& flow, const TimeGrid& grid, const TimeGrid& fine) {
  const auto per_step = static_cast<std::size_t>(grid.step / fine.step);
  std::vector<Discharge> out(fine.count);
  for (std::size_t i = 0; i < fine.count; ++i) {
    const std::size_t before = i / per_step, after = std::min(before + 1, flow.size() - 1);
    const double share = static_cast<double>(i % per_step) / static_cast<double>(per_step);
    out[i] = share == 0.0 ? flow[before] : flow[before] * (1.0 - share) + flow[after] * share;
  }
  return out;
}

}  // namespace floatwright
