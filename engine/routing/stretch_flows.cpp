#include "engine/routing/stretch_flows.hpp"

#include <fmt/core.h>

#include <algorithm>
#include <cmath>

#include "engine/river/shares.hpp"
#include "engine/routing/closing.hpp"
#include "engine/routing/mean_flow.hpp"
#include "engine/routing/wave_travel.hpp"

namespace floatwright {
namespace {

constexpr double kUnseenBound = 0.30;                            // of the flow
constexpr Duration kResidualFades = Duration::from_si(43200.0);  // 12 h, judgement
constexpr double kLongestStep = 1.3;                             // C of one routed piece
constexpr double kLargestDiffusion = 2.0;                        // D of one routed piece

// Short reaches are joined for routing: each is routed from the head of its piece, and the piece ends when it is long
// enough.
struct Piece {
  std::vector<Discharge> inflow;
  WavePath path;

  void add(const WavePath& more) { path = joined(path, more); }
  [[nodiscard]] bool long_enough(Duration dt) const {
    return dt <= path.travel * kLongestStep && path.spread <= path.length * kLargestDiffusion;
  }
};

void tell_dry(bool dry, std::vector<std::string>& doubts) {
  const std::string sentence = "A diversion is typed to take more than the river carries: all of it is taken.";
  if (dry && std::find(doubts.begin(), doubts.end(), sentence) == doubts.end()) doubts.push_back(sentence);
}

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

ReachFlows between(const RoutingInputs& in, const StemStretch& stretch, CaseOf c, AnchorFlows& anchors,
                   std::vector<std::string>& doubts) {
  ReachFlows flows = routed_down(in, stretch, c, anchors.flow[*stretch.top], doubts);
  std::vector<Discharge>& gauge = anchors.flow[*stretch.bottom];
  const Anchor& bottom = in.anchors[*stretch.bottom];
  const bool routed_ahead = anchors.follows_schedule[*stretch.top] && bottom.method == FlowMethod::SameHour;
  const std::size_t ahead = first_forecast_step(bottom, in.fine);

  const bool bounded = anything_typed_between(in, stretch);
  const auto target = routed_ahead ? carried_on(gauge, flows.back(), ahead, in.fine.step) : gauge;
  const Closing closing =
      closing_inflow(flows.back(), target, in.fine.step, bounded ? std::optional{kUnseenBound} : std::nullopt);
  if (c == &PerCase<std::vector<Discharge>>::middle) tell_closing(in, stretch, closing.largest_share, bounded, doubts);

  const std::vector<double> share = unseen_share(in, stretch);
  for (std::size_t k = 0; k < flows.size(); ++k)
    for (std::size_t i = 0; i < in.fine.count; ++i)
      flows[k][i] = std::max(flows[k][i] + share[k] * closing.inflow[i], Discharge{});
  if (routed_ahead) {
    take_routed(gauge, flows.back(), ahead, in.fine.step);
    anchors.follows_schedule[*stretch.bottom] = true;
  }
  flows.back() = gauge;
  return flows;
}

ReachFlows below(const RoutingInputs& in, const StemStretch& stretch, const StretchSources& sources, CaseOf c,
                 const std::vector<Discharge>& top, std::vector<std::string>& doubts) {
  ReachFlows flows = routed_down(in, stretch, c, top, doubts);
  for (std::size_t k = 0; k < flows.size(); ++k)
    for (Discharge& q : flows[k]) q = q * sources.reaches[k].factor;
  return flows;
}

// What the river carried before something joined or was taken at a node.
std::vector<Discharge> above_node(const SideFlows& sides, std::size_t node, CaseOf c, bool undo_joining,
                                  std::vector<Discharge> flow) {
  for (const Taking& taking : sides.taking)
    for (std::size_t i = 0; taking.node == node && i < flow.size(); ++i) flow[i] = flow[i] + taking.flow[i];
  for (const Joining& joining : sides.joining)
    for (std::size_t i = 0; undo_joining && joining.node == node && joining.flow && i < flow.size(); ++i)
      flow[i] = std::max(flow[i] - ((*joining.flow).*c)[i], Discharge{});
  return flow;
}

// No travel: over the short way from the first gauge upstream the wave is not pulled back in time.
ReachFlows above(const RoutingInputs& in, const StemStretch& stretch, const StretchSources& sources, CaseOf c,
                 std::vector<Discharge> flow) {
  ReachFlows flows(stretch.to - stretch.from);
  for (std::size_t k = stretch.to; k-- > stretch.from;) {
    const ReachSource& source = sources.reaches[k - stretch.from];
    if (k + 1 < stretch.to) flow = above_node(in.sides, k + 1, c, !source.by_area, std::move(flow));
    flows[k - stretch.from] = flow;
    for (Discharge& q : flows[k - stretch.from]) q = q * source.factor;
  }
  return flows;
}

}  // namespace

AnchorFlows anchor_flows(const std::vector<Anchor>& anchors, CaseOf c) {
  AnchorFlows out;
  for (const Anchor& anchor : anchors) {
    out.flow.push_back(anchor.flow.*c);
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

ReachFlows routed_down(const RoutingInputs& in, const StemStretch& stretch, CaseOf c, const std::vector<Discharge>& top,
                       std::vector<std::string>& doubts) {
  ReachFlows flows;
  const Duration dt = duration(in.fine.step);
  const Discharge at_top = mean_flow(top);
  Piece piece{top, {}};
  bool dry = false;
  for (std::size_t k = stretch.from; k < stretch.to; ++k) {
    const bool event = anything_at(in.sides, k);
    if (event || (k > stretch.from && piece.long_enough(dt))) piece = {k == stretch.from ? top : flows.back(), {}};
    if (event) piece.inflow = below_node(in.sides, k, c, std::move(piece.inflow), dry);
    const Discharge whole = mean_flow(piece.inflow);
    piece.add(reach_wave(in.river, in.reach(k), whole * own_share(in.river, in.reach(k), whole), at_top).path);
    flows.push_back(routed(piece.inflow, piece.path, dt));
  }
  tell_dry(dry, doubts);
  return flows;
}

ReachFlows stretch_flows(const RoutingInputs& in, const StemStretch& stretch, const StretchSources& sources, CaseOf c,
                         AnchorFlows& anchors, std::vector<std::string>& doubts) {
  if (stretch.top && stretch.bottom) return between(in, stretch, c, anchors, doubts);
  if (stretch.top) return below(in, stretch, sources, c, anchors.flow[*stretch.top], doubts);
  if (stretch.bottom) return above(in, stretch, sources, c, anchors.flow[*stretch.bottom]);
  return ReachFlows(stretch.to - stretch.from, std::vector<Discharge>(in.fine.count));
}

}  // namespace floatwright
