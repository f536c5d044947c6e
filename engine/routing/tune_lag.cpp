#include "engine/routing/tune_lag.hpp"

#include <algorithm>

#include "engine/routing/judge_lag.hpp"
#include "engine/routing/lag_fit.hpp"
#include "engine/routing/lag_pair.hpp"
#include "engine/routing/mean_flow.hpp"

namespace floatwright {
namespace {

constexpr double kStepsForSpread = 2.0;   // that a wave takes at the least
constexpr double kWorthIt = 0.002;        // more of the variance explained
constexpr double kShortestOfAStep = 0.5;  // a lag under half of the records' step is not told from none

FittedLag fitted(const LagPair& pair, const LagLaw& law, double spread, std::size_t changes) {
  return {pair.upper.id, pair.lower.id, law.at_flow, law.time, law.exponent, spread, static_cast<int>(changes)};
}

std::vector<Discharge> routed_linear(const LagPair& pair, const RoutedPart& part, const FittedLag& lag) {
  return routed(part.above, pair.path(pair.river_with({lag}), mean_flow(part.above)), duration(part.step));
}

// The multiplier of diffusion by the routed flow; 1 where no other is worth it, or where the steps are too long to
// tell.
double best_spread(const LagPair& pair, const RoutedPart& part, const LagLaw& law) {
  const auto efficiency = [&](double spread) {
    const auto arriving = routed_linear(pair, part, fitted(pair, law, spread, 0));
    const auto score = routed_score(part, arriving, growth_between(part)).nash_sutcliffe;
    return score ? *score : -1e9;
  };
  if (part.above.empty() || law.time < kStepsForSpread * duration(part.step)) return 1.0;
  double best = 1.0, most = efficiency(1.0) + kWorthIt;
  for (const double spread : {0.25, 0.35, 0.5, 0.71, 1.41, 2.0, 2.83, 4.0}) {
    const double with_it = efficiency(spread);
    if (with_it <= most) continue;
    most = with_it;
    best = spread;
  }
  return best;
}

// The changes before and after an instant, and the rows.
struct Halves {
  std::vector<MatchedChange> earlier, later;
  RoutedPart earlier_flow, later_flow;
};

void judge_rises(const LagPair& pair, const Halves& halves, LagReport& report) {
  const LagLaw law = fitted_lag_law(halves.earlier), constant = lag_law(halves.earlier, 0.0);
  const auto& later = halves.later;
  for (const FlowChange& change : flow_changes(pair.in.above, report.least_change))
    report.rises_above += change.rise() && change.half_way >= report.judged_from ? 1 : 0;
  const River bare = pair.river_with({});
  const FrontMargin told = pair.guessed(bare) ? kGuessedMargin : kChannelMargin;
  report.tuned = rise_score(
      later, [&](Discharge q) { return law.at(q); }, kTimedMargin, kTimedMargin);
  report.constant = rise_score(
      later, [&](Discharge q) { return constant.at(q); }, kTimedMargin, kTimedMargin);
  report.by_channel = rise_score(
      later, [&](Discharge q) { return pair.path(bare, q).travel; }, kChannelMargin, told);
}

FittedLag lag_of_first_half(const LagPair& pair, const Halves& halves) {
  const LagLaw law = fitted_lag_law(halves.earlier);
  return fitted(pair, law, best_spread(pair, halves.earlier_flow, law), halves.earlier.size());
}

void judge_flow(const LagPair& pair, const Halves& halves, const FittedLag& lag, LagReport& report) {
  const RoutedPart &earlier = halves.earlier_flow, &later = halves.later_flow;
  if (earlier.above.empty() || later.above.empty()) return;
  const double growth = growth_between(earlier);
  const WaveTravel travel =
      travel_between(pair.river_with({lag}), pair.in.graph, *pair.upper.place, *pair.lower.place, lag.at_flow);
  const Discharge fastest = *std::max_element(later.above.begin(), later.above.end());
  report.unrouted = routed_score(later, later.above, growth);
  report.routed = routed_score(later, routed_linear(pair, later, lag), growth);
  report.brought_down = routed_score(later, brought_down(later.above, later.step, travel, fastest), growth);
}

Halves halves_of(const std::vector<MatchedChange>& changes, const PairedFlows& flows, LagReport& report) {
  const std::size_t first = flows.grid.index_before(report.used_from);
  const std::size_t middle = (first + flows.grid.count) / 2;
  report.judged_from = flows.grid.at(middle);
  report.judged_to = flows.grid.last();
  Halves halves{{}, {}, routed_part(flows, first, middle), routed_part(flows, middle, flows.grid.count)};
  for (const MatchedChange& change : changes)
    (change.above.half_way < report.judged_from ? halves.earlier : halves.later).push_back(change);
  return halves;
}

void judge(const LagPair& pair, const Halves& halves, LagTuning& tuning) {
  if (static_cast<int>(halves.earlier.size()) >= kLeastChanges) tuning.of_first_half = lag_of_first_half(pair, halves);
  if (!tuning.of_first_half || halves.later.empty()) {
    tuning.report.notes.push_back("Too few changes of flow in the two halves of the record to judge the lag by.");
    return;
  }
  judge_rises(pair, halves, tuning.report);
  judge_flow(pair, halves, *tuning.of_first_half, tuning.report);
}

Measured<FittedLag> fitted_and_judged(const LagTuningInputs& in, LagTuning& tuning) {
  LagReport& report = tuning.report;
  if (std::string why = no_way_down(in); !why.empty()) return Absent{std::move(why)};
  const LagPair pair{in, in.river.gauges[in.upper], in.river.gauges[in.lower]};
  report.apart = pair.apart();
  const PairedFlows flows = paired_flows(in.above, in.below);
  const auto changes = changes_at_both(pair, flows, report);
  if (!changes) return Absent{changes.why_absent()};
  judge(pair, halves_of(*changes, flows, report), tuning);

  const LagLaw law = fitted_lag_law(*changes);
  if (law.time < kShortestOfAStep * duration(flows.grid.step))
    return Absent{"the lag is under half of the records' step: too short to be told"};
  const RoutedPart whole = routed_part(flows, flows.grid.index_before(report.used_from), flows.grid.count);
  return fitted(pair, law, best_spread(pair, whole, law), changes->size());
}

}  // namespace

LagTuning tune_lag(const LagTuningInputs& in) {
  LagTuning tuning;
  LagReport& report = tuning.report;
  report.from = in.river.gauges[in.upper].id;
  report.to = in.river.gauges[in.lower].id;
  tuning.lag = fitted_and_judged(in, tuning);
  if (!tuning.lag)
    report.notes.push_back("No lag from " + report.from + " to " + report.to + ": " + tuning.lag.why_absent() + ".");
  return tuning;
}

}  // namespace floatwright
