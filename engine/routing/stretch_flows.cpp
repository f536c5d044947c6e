#include "engine/routing/stretch_flows.hpp"

#include <fmt/core.h>

#include <algorithm>
#include <cmath>

#include "engine/routing/closing.hpp"

namespace floatwright {
namespace {

constexpr double kUnseenBound = 0.30;                            // of the flow
constexpr Duration kResidualFades = Duration::from_si(43200.0);  // 12 h, judgement
// Of two gauges together, 10 % each: a record that the US Geological Survey calls good has 95 % of its daily flows
// within 10 % (from memory).
constexpr double kGaugesDiffer = 0.14;
constexpr double kMostYield = 3.0;  // times what the area above the upper gauge gives; judgement, as in area_ratio

void tell_closing(const RoutingInputs& in, const StemStretch& stretch, double largest, bool bounded,
                  std::vector<std::string>& doubts) {
  if (largest <= kUnseenBound) return;
  const std::string between =
      fmt::format("Between {} and {}", in.anchors[*stretch.top].name, in.anchors[*stretch.bottom].name);
  doubts.push_back(
      bounded
          ? fmt::format(
                "{} up to {:.0f} % of the flow is unaccounted for: no more than {:.0f} % is spread over the reaches.",
                between, 100.0 * largest, 100.0 * kUnseenBound)
          : fmt::format("{} up to {:.0f} % of the flow is unaccounted for: is a tributary or a diversion missing from "
                        "the river file?",
                        between, 100.0 * largest));
}

bool anything_typed_between(const RoutingInputs& in, const StemStretch& stretch) {
  for (std::size_t k = stretch.from; k < stretch.to; ++k)
    if (in.reach(k).drainage_area || !in.reach(k).tributaries_at_start.empty()) return true;
  return false;
}

std::size_t first_forecast_step(const Anchor& anchor, const TimeGrid& fine) {
  std::size_t i = 0;
  while (i < fine.count && fine.at(i) < anchor.forecast_from) ++i;
  return i;
}

// The lower gauge as it would go on if what entered unseen over its last day kept entering.
std::vector<Discharge> carried_on(std::vector<Discharge> gauge, const std::vector<Discharge>& routed, std::size_t from,
                                  Period step) {
  const std::size_t day = std::min(from, static_cast<std::size_t>(std::chrono::hours{24} / step));
  Discharge unseen;
  for (std::size_t i = from - day; i < from; ++i) unseen = unseen + (gauge[i] - routed[i]);
  if (day > 0) unseen = unseen / static_cast<double>(day);
  for (std::size_t i = from; i < gauge.size(); ++i) gauge[i] = std::max(routed[i] + unseen, Discharge{});
  return gauge;
}

// Past its newest reading the gauge takes the closed routed flow, its own last difference fading.
void take_routed(std::vector<Discharge>& gauge, const std::vector<Discharge>& closed, std::size_t from, Period step) {
  if (from == 0) return;
  const Discharge off = gauge[from - 1] - closed[from - 1];
  for (std::size_t i = from; i < gauge.size(); ++i) {
    const double fade = std::exp(-(duration(step) * static_cast<double>(i - from + 1)) / kResidualFades);
    gauge[i] = std::max(closed[i] + off * fade, Discharge{});
  }
}

// What the ground between two gauges would bring at the yield of the ground above; none without areas.
std::optional<Discharge> inflow_by_area(const RoutingInputs& in, const StemStretch& stretch, Discharge at_top) {
  const auto& above = in.anchors[*stretch.top].drainage_area;
  const auto& below = in.anchors[*stretch.bottom].drainage_area;
  if (!above || !below || !(*above > Area{})) return std::nullopt;
  Area between = *below - *above;
  for (const Joining& joining : in.sides.joining)
    if (joining.node >= stretch.from && joining.node < stretch.to && joining.flow && joining.drainage_area)
      between = between - *joining.drainage_area;
  return at_top * std::max(0.0, between / *above);
}

// Over the last day that both gauges saw.
void tell_disagreement(const RoutingInputs& in, const StemStretch& stretch, const std::vector<Discharge>& routed,
                       const std::vector<Discharge>& gauge, std::vector<std::string>& doubts) {
  const Anchor& top = in.anchors[*stretch.top];
  const Anchor& bottom = in.anchors[*stretch.bottom];
  const std::size_t known = std::min(first_forecast_step(top, in.fine), first_forecast_step(bottom, in.fine));
  const auto day = static_cast<std::size_t>(std::chrono::hours{24} / in.fine.step);
  if (known < day || !top.gauge || !bottom.gauge) return;
  Discharge came, shown;
  for (std::size_t i = known - day; i < known; ++i) {
    came = came + routed[i] / static_cast<double>(day);
    shown = shown + gauge[i] / static_cast<double>(day);
  }
  if (!(came > Discharge{})) return;
  const double off = (shown - came) / came;
  if (off < -kGaugesDiffer)
    doubts.push_back(
        fmt::format("{} shows {:.0f} % less than what comes down from {}: one of them is off, or water is "
                    "taken out that the river file does not know of.",
                    bottom.name, -100.0 * off, top.name));
  const auto by_area = inflow_by_area(in, stretch, came);
  if (by_area && off > kMostYield * (*by_area / came) + kGaugesDiffer)
    doubts.push_back(
        fmt::format("{} shows {:.0f} % more than what comes down from {}, and the ground between would bring "
                    "{:.0f} %: one of them is off, or water joins that the river file does not know of.",
                    bottom.name, 100.0 * off, top.name, 100.0 * (*by_area / came)));
}

// Closes one case of `flows` on the lower gauge; gives the largest share of the flow that the closing asked for.
double close(const RoutingInputs& in, const StemStretch& stretch, CaseOf c, std::optional<double> bound,
             ReachFlows& flows, AnchorFlows& anchors) {
  std::vector<Discharge>& gauge = anchors.flow[*stretch.bottom].*c;
  const Anchor& bottom = in.anchors[*stretch.bottom];
  const bool routed_ahead = anchors.follows_schedule[*stretch.top] && bottom.method == FlowMethod::SameHour;
  const std::size_t ahead = first_forecast_step(bottom, in.fine);
  const auto target = routed_ahead ? carried_on(gauge, flows.back().*c, ahead, in.fine.step) : gauge;
  const Closing closing = closing_inflow(flows.back().*c, target, in.fine.step, bound);

  const std::vector<double> share = unseen_share(in, stretch);
  for (std::size_t k = 0; k < flows.size(); ++k)
    for (std::size_t i = 0; i < in.fine.count; ++i)
      (flows[k].*c)[i] = std::max((flows[k].*c)[i] + share[k] * closing.inflow[i], Discharge{});
  if (routed_ahead) take_routed(gauge, flows.back().*c, ahead, in.fine.step);
  flows.back().*c = gauge;
  return closing.largest_share;
}

ReachFlows between(const RoutingInputs& in, const StemStretch& stretch, AnchorFlows& anchors,
                   std::vector<std::string>& doubts) {
  ReachFlows flows = routed_down(in, stretch, anchors.flow[*stretch.top], doubts);
  const bool bounded = anything_typed_between(in, stretch);
  const auto bound = bounded ? std::optional{kUnseenBound} : std::nullopt;
  tell_disagreement(in, stretch, flows.back().middle, anchors.flow[*stretch.bottom].middle, doubts);
  close(in, stretch, &CaseSeries::low, bound, flows, anchors);
  const double largest = close(in, stretch, &CaseSeries::middle, bound, flows, anchors);
  close(in, stretch, &CaseSeries::high, bound, flows, anchors);
  tell_closing(in, stretch, largest, bounded, doubts);
  const bool follows = anchors.follows_schedule[*stretch.top];
  if (follows && in.anchors[*stretch.bottom].method == FlowMethod::SameHour)
    anchors.follows_schedule[*stretch.bottom] = true;
  return flows;
}

void scale(CaseSeries& flow, double factor) {
  for (const CaseOf c : kCases)
    for (Discharge& q : flow.*c) q = q * factor;
}

ReachFlows below(const RoutingInputs& in, const StemStretch& stretch, const StretchSources& sources,
                 const CaseSeries& top, std::vector<std::string>& doubts) {
  ReachFlows flows = routed_down(in, stretch, top, doubts);
  for (std::size_t k = 0; k < flows.size(); ++k) scale(flows[k], sources.reaches[k].factor);
  return flows;
}

// What the river carried before something joined or was taken at a node.
void undo_node(const SideFlows& sides, std::size_t node, bool undo_joining, CaseSeries& flow) {
  for (const CaseOf c : kCases) {
    std::vector<Discharge>& row = flow.*c;
    for (const Taking& taking : sides.taking)
      for (std::size_t i = 0; taking.node == node && i < row.size(); ++i) row[i] = row[i] + taking.flow[i];
    for (const Joining& joining : sides.joining)
      for (std::size_t i = 0; undo_joining && joining.node == node && joining.flow && i < row.size(); ++i)
        row[i] = std::max(row[i] - ((*joining.flow).*c)[i], Discharge{});
  }
}

// No travel: over the short way from the first gauge upstream the wave is not pulled back in time.
ReachFlows above(const RoutingInputs& in, const StemStretch& stretch, const StretchSources& sources, CaseSeries flow) {
  ReachFlows flows(stretch.to - stretch.from);
  for (std::size_t k = stretch.to; k-- > stretch.from;) {
    const ReachSource& source = sources.reaches[k - stretch.from];
    if (k + 1 < stretch.to) undo_node(in.sides, k + 1, !source.by_area, flow);
    flows[k - stretch.from] = flow;
    scale(flows[k - stretch.from], source.factor);
  }
  return flows;
}

}  // namespace

AnchorFlows anchor_flows(const std::vector<Anchor>& anchors) {
  AnchorFlows out;
  for (const Anchor& anchor : anchors) {
    out.flow.push_back(anchor.flow);
    out.follows_schedule.push_back(anchor.follows_schedule());
  }
  return out;
}

std::vector<double> unseen_share(const RoutingInputs& in, const StemStretch& stretch) {
  const std::size_t n = stretch.to - stretch.from;
  std::vector<double> by_area(n), by_length(n);  // m2, m
  const auto at_top = stretch.top ? in.anchors[*stretch.top].drainage_area : std::nullopt;
  bool areas = at_top.has_value();
  Area before = at_top.value_or(Area{});
  for (std::size_t k = 0; k < n; ++k) {
    const Reach& reach = in.reach(stretch.from + k);
    by_length[k] = in_metres(reach.length);
    areas = areas && reach.drainage_area.has_value();
    if (!areas) continue;
    Area grown = *reach.drainage_area - before;
    for (const Joining& joining : in.sides.joining)
      if (joining.node == stretch.from + k && joining.flow && joining.drainage_area)
        grown = grown - *joining.drainage_area;
    by_area[k] = std::max(0.0, in_square_metres(grown));
    before = *reach.drainage_area;
  }
  double total = 0.0;
  for (const double a : by_area) total += a;
  std::vector<double> share = areas && total > 0.0 ? by_area : by_length;
  for (std::size_t k = 1; k < n; ++k) share[k] += share[k - 1];
  const double whole = share.empty() ? 0.0 : share.back();
  for (double& s : share) s = whole > 0.0 ? s / whole : 1.0;
  return share;
}

ReachFlows stretch_flows(const RoutingInputs& in, const StemStretch& stretch, const StretchSources& sources,
                         AnchorFlows& anchors, std::vector<std::string>& doubts) {
  if (stretch.top && stretch.bottom) return between(in, stretch, anchors, doubts);
  if (stretch.top) return below(in, stretch, sources, anchors.flow[*stretch.top], doubts);
  if (stretch.bottom) return above(in, stretch, sources, anchors.flow[*stretch.bottom]);
  const std::vector<Discharge> unknown(in.fine.count);
  return ReachFlows(stretch.to - stretch.from, CaseSeries{unknown, unknown, unknown});
}

}  // namespace floatwright
