#include "engine/routing/stretch_sources.hpp"

#include <fmt/core.h>

#include <algorithm>
#include <cmath>
#include <utility>

#include "engine/routing/area_ratio.hpp"
#include "engine/routing/mean_flow.hpp"

namespace floatwright {
namespace {

constexpr Length kFarWithoutAreas = Length::from_si(20000.0);     // judgement: told
constexpr Length kTooFarWithoutAreas = Length::from_si(40000.0);  // judgement: refused

FlowAnchor named(const Anchor& anchor) {
  return anchor.gauge ? FlowAnchor{anchor.gauge, std::nullopt} : FlowAnchor{std::nullopt, anchor.dam};
}

FlowSource at(const FlowAnchor& anchor) { return {.origin = FlowOrigin::At, .from = anchor}; }

ReachSource unknown_because(std::string why, bool by_area = false, Length away = {}) {
  return {{.away = away, .why_unknown = std::move(why)}, by_area, 1.0};
}

void add_once(std::vector<std::string>& sentences, std::string sentence) {
  if (std::find(sentences.begin(), sentences.end(), sentence) == sentences.end())
    sentences.push_back(std::move(sentence));
}

// Why a diversion at this node hides the flow on its far side from the anchor; empty where it is small, which is told.
std::string hidden_by_diversion(const RoutingInputs& in, std::size_t node, const Anchor& anchor,
                                std::vector<std::string>& doubts) {
  for (const Taking& taking : in.sides.taking) {
    if (taking.node != node) continue;
    const double most = std::max_element(taking.flow.begin(), taking.flow.end())->si(),
                 flow = mean_flow(anchor.flow.middle).si();
    if (most > kSmallDiversion * flow)
      return fmt::format("{} takes more than {:.0f} % of the flow at {}, and no gauge stands beyond it", taking.name,
                         100.0 * kSmallDiversion, anchor.name);
    if (most > 0.0)
      add_once(doubts,
               fmt::format("{} is counted as typed; no gauge beyond it tells what it really takes.", taking.name));
  }
  return "";
}

// By area where both are known, else the same flow over a short way.
ReachSource from_anchor(const RoutingInputs& in, const Anchor& anchor, std::optional<Area> anchor_area,
                        const Reach& reach, Length away, FlowOrigin side, std::vector<std::string>& doubts) {
  const char* const side_word = side == FlowOrigin::Below ? "below" : "above";
  if (anchor_area && reach.drainage_area) {
    const auto ratio = area_ratio(*reach.drainage_area, *anchor_area, in.river.area_exponent);
    if (!ratio) return unknown_because(reach.id + " " + ratio.why_absent(), true);
    if (ratio->in_doubt)
      add_once(doubts, fmt::format("Some of the river {} {} drains less than half or more than one and a half times "
                                   "what it does: flows there are in doubt.",
                                   side_word, anchor.name));
    return {{.origin = side, .from = named(anchor), .area_ratio = ratio->factor, .away = away}, true, ratio->factor};
  }
  if (away > kTooFarWithoutAreas)
    return unknown_because(anchor.name + " is too far away and no drainage areas are typed", false, away);
  if (away > kFarWithoutAreas)
    add_once(doubts,
             fmt::format("Far {} {} its flow is taken unchanged: type drainage areas.", side_word, anchor.name));
  return {{.origin = side, .from = named(anchor), .away = away}, false, 1.0};
}

// Areas of the anchor and of what is known to have joined since.
StretchSources below(const RoutingInputs& in, const StemStretch& stretch, const Anchor& anchor) {
  StretchSources out;
  std::optional<Area> area = anchor.drainage_area;
  std::string hidden;
  for (std::size_t k = stretch.from; k < stretch.to; ++k) {
    for (const Joining& joining : in.sides.joining) {
      if (joining.node != k || !joining.flow || !area) continue;
      area = joining.drainage_area ? std::optional{*area + *joining.drainage_area} : std::nullopt;
    }
    if (hidden.empty()) hidden = hidden_by_diversion(in, k, anchor, out.doubts);
    const Length away = place_of(in.graph, in.stem, stretch.from) - in.reach(k).to;
    out.reaches.push_back(hidden.empty()
                              ? from_anchor(in, anchor, area, in.reach(k), away, FlowOrigin::Below, out.doubts)
                              : unknown_because(hidden));
  }
  return out;
}

std::string unknown_joining(const RoutingInputs& in, std::size_t node) {
  for (const Joining& joining : in.sides.joining)
    if (joining.node == node && !joining.flow) return joining.name;
  return "";
}

StretchSources above(const RoutingInputs& in, const StemStretch& stretch, const Anchor& anchor) {
  StretchSources out;
  out.reaches.resize(stretch.to - stretch.from);
  std::string hidden;
  for (std::size_t k = stretch.to; k-- > stretch.from;) {
    const Length away = in.reach(k).to - place_of(in.graph, in.stem, stretch.to);
    const ReachSource source =
        from_anchor(in, anchor, anchor.drainage_area, in.reach(k), away, FlowOrigin::Above, out.doubts);
    if (hidden.empty() && k + 1 < stretch.to && !source.by_area)
      if (const std::string name = unknown_joining(in, k + 1); !name.empty())
        hidden = name + " joins below with a flow that nobody knows, and no drainage areas are typed";
    if (hidden.empty() && k + 1 < stretch.to) hidden = hidden_by_diversion(in, k + 1, anchor, out.doubts);
    out.reaches[k - stretch.from] = hidden.empty() ? source : unknown_because(hidden);
  }
  return out;
}

StretchSources unknown(const RoutingInputs& in, const StemStretch& stretch) {
  const bool above_dam = stretch.to + 1 < in.stem.nodes();
  const ReachSource source =
      unknown_because(above_dam ? "no gauge above the dam, and the flow below a dam says nothing of it"
                                : "no gauge speaks for this water");
  return {std::vector<ReachSource>(stretch.to - stretch.from, source), {}};
}

void tell_lakes(const RoutingInputs& in, const StemStretch& stretch, StretchSources& out) {
  for (std::size_t k = stretch.from; k < stretch.to; ++k) {
    const Reach& reach = in.reach(k);
    if (!reach.lake || !out.reaches[k - stretch.from].known()) continue;
    const bool typed = std::any_of(in.river.wave_times.begin(), in.river.wave_times.end(),
                                   [&](const WaveTime& w) { return w.from >= reach.from && w.to <= reach.to; });
    if (!typed)
      add_once(out.doubts, fmt::format("{} is counted without storage: type a wave time across it.",
                                       in.river.lakes[*reach.lake].name));
  }
}

}  // namespace

StretchSources stretch_sources(const RoutingInputs& in, const StemStretch& stretch) {
  StretchSources out;
  if (stretch.top && stretch.bottom) {
    const FlowAnchor top = named(in.anchors[*stretch.top]), bottom = named(in.anchors[*stretch.bottom]);
    const FlowSource between{.origin = FlowOrigin::Between, .from = top, .to = bottom};
    out.reaches.assign(stretch.to - stretch.from, ReachSource{between, false, 1.0});
    out.reaches.back().source = at(bottom);
  } else if (stretch.top) {
    out = below(in, stretch, in.anchors[*stretch.top]);
  } else if (stretch.bottom) {
    out = above(in, stretch, in.anchors[*stretch.bottom]);
    out.reaches.back().source = at(named(in.anchors[*stretch.bottom]));
  } else {
    out = unknown(in, stretch);
  }
  tell_lakes(in, stretch, out);
  return out;
}

}  // namespace floatwright
