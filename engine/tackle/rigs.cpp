// Which rigs can be: the hard limits, each with its sentence, and the list of all that pass them.
#include <algorithm>
#include <set>

#include "engine/tackle/precedence.hpp"
#include "engine/tackle/tackle.hpp"

namespace floatwright {
namespace {

// Judgement, all four.
constexpr double kHeaviestFly = 0.15, kHardToCastFly = 0.10;  // shares of the first 30 ft by mass
constexpr Mass kLeastWeightOnThinLine = grams(0.4);
constexpr int kMostOverRod = 1;

const Rod* rod_of(const Tackle& tackle, const Line& line) {
  const auto at =
      std::find_if(tackle.rods.begin(), tackle.rods.end(), [&](const Rod& r) { return r.id == line.on_rod; });
  return at == tackle.rods.end() ? nullptr : &*at;
}

bool sinks(LineKind kind) {
  return kind == LineKind::FloatingWithSinkingLeader || kind == LineKind::SinkingTip || kind == LineKind::LoopedHead ||
         kind == LineKind::ClearTip || kind == LineKind::FullSinking;
}

bool carries_indicator(LineKind kind) {
  return kind == LineKind::Floating || kind == LineKind::NymphTaper || kind == LineKind::DoubleTaper;
}

using Verdict = std::optional<std::string>;

Verdict against_rod(const Tackle& tackle, const Line& line) {
  const Rod* rod = rod_of(tackle, line);
  if (rod == nullptr) return line.id + " is on no rod: say which rod carries it to have it chosen.";
  if (line.line_number <= rod->line_number + kMostOverRod) return std::nullopt;
  return "A number " + std::to_string(line.line_number) + " line is too heavy for the number " +
         std::to_string(rod->line_number) + " rod " + rod->id + ": one number over the rod at most.";
}

Verdict against_tip(const Tackle& tackle, const Rig& rig) {
  const Line& line = tackle.lines[rig.line];
  if (line.kind != LineKind::LoopedHead) {
    return rig.tip ? Verdict(line.id + " has no loop to put a tip on.") : std::nullopt;
  }
  if (!rig.tip) return line.id + " needs a tip on its loop: none is put on.";
  const LoopedTip& tip = tackle.tips[*rig.tip];
  if (tip.weight && line.least_tip && *tip.weight < *line.least_tip) {
    return tip.id + " is too light for " + line.id + ": the head would kick it over.";
  }
  if (tip.weight && line.most_tip && *tip.weight > *line.most_tip) {
    return tip.id + " is heavier than " + line.id + " can turn over.";
  }
  return std::nullopt;
}

Verdict against_method(const Line& line, Method method) {
  if (line.kind == LineKind::LoopedHead && method != Method::Swing) {
    return line.id + " is for the swing: its loop catches in the guides and hinges in the cast.";
  }
  // Common practice, no source: it has no weight of its own to throw a fly with, and no taper to turn one over.
  if (is_thin(line.kind) && method != Method::TightLine) return line.id + " is for a short tight line only.";
  if (method == Method::Indicator && !carries_indicator(line.kind)) {
    return "An indicator goes on a floating, nymph-taper or double-taper line, not on " + line.id + ".";
  }
  if (method == Method::Dry && sinks(line.kind)) return line.id + " sinks at its end and would drown a dry fly.";
  if (method == Method::TightLine && sinks(line.kind))
    return line.id + " sinks: a tight-line drift is led by a floating line.";
  return std::nullopt;
}

Mass first_30_ft(const Tackle& tackle, const Rig& rig) {
  const Line& line = tackle.lines[rig.line];
  if (line.first_30_ft) return *line.first_30_ft;
  if (line.head_weight) {
    const bool weighed_tip = rig.tip && tackle.tips[*rig.tip].weight;
    return weighed_tip ? *line.head_weight + *tackle.tips[*rig.tip].weight : *line.head_weight;
  }
  return standard_mass(line.line_number).value_or(Mass{});
}

RigVerdict by_weight(const Tackle& tackle, const Rig& rig, Mass fly) {
  const Line& line = tackle.lines[rig.line];
  const Mass carried = fly + rig.shot;
  if (is_thin(line.kind)) {
    if (carried > kLeastWeightOnThinLine - grams(1e-6)) return {};  // two pieces of 0.2 g count as 0.4
    return {line.id + " can't be cast without 0.4 g of fly and shot to carry it.", {}};
  }
  const Mass head = first_30_ft(tackle, rig);
  if (!(head > Mass{})) return {"The weight of " + line.id + " is unknown: its code gives no line number.", {}};
  const double share = carried / head;
  if (share > kHeaviestFly) return {"Fly and shot are over 15 % of what the first 30 ft of " + line.id + " weigh.", {}};
  if (share > kHardToCastFly) return {{}, "hard to cast"};
  return {};
}

// The pieces of shot on a leader: none, one, or two of any sizes aboard.
std::vector<Mass> shot_sums(const Tackle& tackle, Method method) {
  std::set<Mass> sums{Mass{}};
  if (method != Method::Indicator && method != Method::TightLine) return {Mass{}};
  for (const Mass a : tackle.shot) {
    sums.insert(a);
    for (const Mass b : tackle.shot) sums.insert(a + b);
  }
  std::vector<Mass> apart;
  for (const Mass sum : sums) {
    if (apart.empty() || sum - apart.back() > grams(0.001)) apart.push_back(sum);  // 0.2 + 0.2 is 0.4 but for rounding
  }
  return apart;
}

std::vector<std::optional<std::size_t>> tips_on(const Line& line, const Precedence& order) {
  if (line.kind != LineKind::LoopedHead) return {std::nullopt};
  return {order.tips.begin(), order.tips.end()};
}

}  // namespace

RigVerdict rig_verdict(const Tackle& tackle, const Rig& rig, Method method) {
  const Line& line = tackle.lines[rig.line];
  const FlyClass& fly = tackle.flies[rig.fly];
  if (auto out = against_rod(tackle, line)) return {out, {}};
  if (auto out = against_method(line, method)) return {out, {}};
  if (auto out = against_tip(tackle, rig)) return {out, {}};
  if (std::find(fly.uses.begin(), fly.uses.end(), method) == fly.uses.end()) {
    return {"The " + fly.name + " is not listed for this method.", {}};
  }
  if (!fly.mass) return {"No mass is given for the " + fly.name + ": weigh ten of them to have it chosen.", {}};
  if (method != Method::Dry && !(fly.sink_rate > Speed{})) {
    return {"No sink rate is given for the " + fly.name + ": time it in a glass to have it chosen.", {}};
  }
  RigVerdict verdict = by_weight(tackle, rig, *fly.mass);
  if (!verdict.ruled_out && rig.tip && !tackle.tips[*rig.tip].weight && (line.least_tip || line.most_tip)) {
    verdict.warning = tackle.tips[*rig.tip].id + " has no weight: whether " + line.id + " carries it is unknown";
  }
  return verdict;
}

std::vector<Rig> rigs_for(const Tackle& tackle, Method method) {
  const std::vector<Mass> shots = shot_sums(tackle, method);
  const Precedence order = precedence(tackle);
  std::vector<Rig> rigs;
  for (const std::size_t line : order.lines) {
    for (const auto& tip : tips_on(tackle.lines[line], order)) {
      for (const std::size_t fly : order.flies) {
        for (const Mass shot : shots) {
          const Rig rig{line, tip, fly, shot};
          if (!rig_verdict(tackle, rig, method).ruled_out) rigs.push_back(rig);
        }
      }
    }
  }
  return rigs;
}

}  // namespace floatwright
