#include "engine/routing/side_flows.hpp"

#include <fmt/core.h>

#include <algorithm>
#include <cmath>

#include "engine/forecast/local_clock.hpp"
#include "engine/routing/area_ratio.hpp"
#include "engine/routing/mean_flow.hpp"

namespace floatwright {
namespace {

CaseSeries scaled(const GaugeOutlook& outlook, double factor, const TimeGrid& grid, const TimeGrid& fine) {
  return each_case(*outlook.flow, [&](const std::vector<Discharge>& flow) {
    std::vector<Discharge> out = refined(flow, grid, fine);
    for (Discharge& q : out) q = q * factor;
    return out;
  });
}

// The gauge of a tributary, scaled to where it joins.
Measured<CaseSeries> by_own_gauge(const River& river, const Tributary& tributary, std::size_t gauge,
                                  const GaugeOutlook& outlook, const TimeGrid& grid, const TimeGrid& fine,
                                  std::vector<std::string>& doubts) {
  if (!outlook.flow) return Absent{outlook.flow.why_absent()};
  const auto& at_gauge = river.gauges[gauge].drainage_area;
  if (!tributary.drainage_area || !at_gauge) return scaled(outlook, 1.0, grid, fine);
  const auto ratio = area_ratio(*tributary.drainage_area, *at_gauge, river.area_exponent);
  if (!ratio) return Absent{ratio.why_absent()};
  if (ratio->in_doubt)
    doubts.push_back(
        fmt::format("{} drains {:.1f} times what its gauge does: its flow is in doubt.", tributary.name, ratio->areas));
  return scaled(outlook, ratio->factor, grid, fine);
}

// Whether the ground above the gauge speaks in its flow: no dam above it on the stem, and no ditches of a fifth of it.
bool natural(const River& river, const GaugeSite& gauge, const GaugeOutlook& outlook, Instant at) {
  if (outlook.state == FlowState::Regulated) return false;
  if (!gauge.place) return true;
  if (std::ranges::any_of(river.dams, [&](const Dam& dam) { return dam.place >= *gauge.place; })) return false;
  Discharge taken;
  for (const Diversion& ditch : river.diversions)
    if (ditch.place >= *gauge.place && (!ditch.season || in_season(*ditch.season, at, river.time_zone)))
      taken = taken + ditch.flow;
  return taken <= kSmallDiversion * mean_flow(outlook.flow->middle);
}

// Without a gauge of its own: of the natural gauges the nearest in drainage area.
Measured<CaseSeries> by_area(const River& river, const Tributary& tributary, const std::vector<GaugeOutlook>& outlooks,
                             const TimeGrid& grid, const TimeGrid& fine, std::vector<std::string>& doubts) {
  if (!tributary.drainage_area) return Absent{"neither a gauge nor a drainage area is typed for it"};
  std::optional<std::size_t> best;
  double best_off = 0.0;
  for (std::size_t i = 0; i < river.gauges.size() && i < outlooks.size(); ++i) {
    if (!outlooks[i].flow || !river.gauges[i].drainage_area) continue;
    if (!natural(river, river.gauges[i], outlooks[i], grid.last())) continue;
    if (!area_ratio(*tributary.drainage_area, *river.gauges[i].drainage_area, river.area_exponent)) continue;
    const double off = std::abs(std::log(*tributary.drainage_area / *river.gauges[i].drainage_area));
    if (best && off >= best_off) continue;
    best = i;
    best_off = off;
  }
  if (!best) return Absent{"no gauge above dams and large ditches drains between a third and three times as much"};
  const auto ratio = area_ratio(*tributary.drainage_area, *river.gauges[*best].drainage_area, river.area_exponent);
  doubts.push_back(fmt::format("{} has no gauge: taken as {:.2g} of gauge {} by area.", tributary.name, ratio->factor,
                               river.gauges[*best].id));
  return scaled(outlooks[*best], ratio->factor, grid, fine);
}

Measured<CaseSeries> tributary_flow(const River& river, const Tributary& tributary,
                                    const std::vector<GaugeOutlook>& outlooks, const TimeGrid& grid,
                                    const TimeGrid& fine, std::vector<std::string>& doubts) {
  for (std::size_t i = 0; i < river.gauges.size() && i < outlooks.size(); ++i)
    if (!tributary.gauge.empty() && river.gauges[i].id == tributary.gauge)
      return by_own_gauge(river, tributary, i, outlooks[i], grid, fine, doubts);
  return by_area(river, tributary, outlooks, grid, fine, doubts);
}

// Its own, else that of the gauge on it.
std::optional<Area> area_of(const River& river, const Tributary& tributary) {
  if (tributary.drainage_area) return tributary.drainage_area;
  for (const GaugeSite& gauge : river.gauges)
    if (!tributary.gauge.empty() && gauge.id == tributary.gauge) return gauge.drainage_area;
  return std::nullopt;
}

Taking taking(const River& river, const Diversion& diversion, std::size_t node, const TimeGrid& fine) {
  Taking out{node, diversion.name, std::vector<Discharge>(fine.count)};
  for (std::size_t i = 0; i < fine.count; ++i)
    if (!diversion.season || in_season(*diversion.season, fine.at(i), river.time_zone)) out.flow[i] = diversion.flow;
  return out;
}

}  // namespace

SideFlows side_flows(const River& river, const RiverGraph& graph, const Stem& stem,
                     const std::vector<GaugeOutlook>& outlooks, const TimeGrid& grid, const TimeGrid& fine) {
  SideFlows sides;
  for (std::size_t node = 0; node < stem.reaches.size(); ++node) {
    const Reach& reach = graph.reaches[stem.reaches[node]];
    for (const std::size_t index : reach.tributaries_at_start) {
      const Tributary& tributary = river.tributaries[index];
      auto flow = tributary_flow(river, tributary, outlooks, grid, fine, sides.doubts);
      if (!flow) sides.doubts.push_back(fmt::format("{}: flow unknown ({}).", tributary.name, flow.why_absent()));
      sides.joining.push_back({node, tributary.name, area_of(river, tributary), std::move(flow)});
    }
    for (const std::size_t index : reach.diversions_at_start)
      sides.taking.push_back(taking(river, river.diversions[index], node, fine));
  }
  return sides;
}

void pass_node(const SideFlows& sides, std::size_t node, const CaseRow& flow, bool& short_of_water) {
  for (const Joining& joining : sides.joining) {
    if (joining.node != node || !joining.flow) continue;
    add_to(flow.low, joining.flow->low);
    add_to(flow.middle, joining.flow->middle);
    add_to(flow.high, joining.flow->high);
  }
  for (const Taking& taking : sides.taking)
    for (const auto row : {flow.low, flow.middle, flow.high})
      for (std::size_t i = 0; taking.node == node && i < row.size(); ++i) {
        short_of_water = short_of_water || taking.flow[i] > row[i];
        row[i] = std::max(row[i] - taking.flow[i], Discharge{});
      }
}

PerCase<Discharge> mean_below_node(const SideFlows& sides, std::size_t node, PerCase<Discharge> mean) {
  for (const Joining& joining : sides.joining) {
    if (joining.node != node || !joining.flow) continue;
    mean = {mean.low + mean_flow(joining.flow->low), mean.middle + mean_flow(joining.flow->middle),
            mean.high + mean_flow(joining.flow->high)};
  }
  for (const Taking& taking : sides.taking) {
    if (taking.node != node) continue;
    mean = each_case(mean, [taken = mean_flow(taking.flow)](Discharge q) { return std::max(q - taken, Discharge{}); });
  }
  return mean;
}

bool anything_at(const SideFlows& sides, std::size_t node) {
  const auto here = [&](const auto& side) { return side.node == node; };
  return std::any_of(sides.joining.begin(), sides.joining.end(), here) ||
         std::any_of(sides.taking.begin(), sides.taking.end(), here);
}

}  // namespace floatwright
