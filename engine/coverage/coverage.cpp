#include "engine/coverage/coverage.hpp"

#include <algorithm>
#include <cmath>

namespace floatwright {
namespace {

constexpr double kEarnsNothing = 0.0005;  // share that rounds to nothing
constexpr double kTenth = 0.1;
constexpr double kFlowStep = 0.1;  // of the logarithm: a tenth more

using Fishing = std::vector<CoveredFishing>;

LineMask bit(std::size_t line) { return LineMask{1} << line; }

LineMask owned_mask(const std::vector<ConsideredLine>& lines) {
  LineMask mask = 0;
  for (std::size_t i = 0; i < lines.size(); ++i)
    if (lines[i].owned) mask |= bit(i);
  return mask;
}

// `by_flow` rises.
FishingSpan span_of(const Fishing& by_flow, double whole) {
  FishingSpan span;
  double sum = 0.0;
  for (const CoveredFishing& one : by_flow) {
    if (sum <= kTenth * whole) span.from = one.flow;
    if (sum <= (1.0 - kTenth) * whole) span.to = one.flow;
    sum += one.weight;
    span.by_month[static_cast<std::size_t>(one.month - 1)] += one.weight / whole;
    span.by_water[static_cast<std::size_t>(one.water)] += one.weight / whole;
  }
  return span;
}

int step_of(Discharge flow) { return static_cast<int>(std::floor(std::log(flow.si()) / kFlowStep)); }
Discharge begin_of(int step) { return cubic_metres_per_second(std::exp(kFlowStep * step)); }

// Flows from the least to the most, and what each line covers in each.
void add_flows(Coverage& out, const Fishing& fishing) {
  const int first = step_of(fishing.front().flow), last = step_of(fishing.back().flow);
  for (int step = first; step <= last; ++step) out.flows.push_back({begin_of(step), begin_of(step + 1), 0.0});
  for (LineCoverage& line : out.lines) line.by_flow.assign(out.flows.size(), 0.0);
  for (const CoveredFishing& one : fishing) {
    const auto step = static_cast<std::size_t>(step_of(one.flow) - first);
    out.flows[step].share += one.weight;
    for (std::size_t i = 0; i < out.lines.size(); ++i)
      if (one.lines & bit(i)) out.lines[i].by_flow[step] += one.weight;
  }
  for (std::size_t step = 0; step < out.flows.size(); ++step) {
    for (LineCoverage& line : out.lines)
      if (out.flows[step].share > 0.0) line.by_flow[step] /= out.flows[step].share;
    out.flows[step].share /= out.fishing;
  }
}

LineCoverage coverage_of(std::size_t i, const ConsideredLine& line, LineMask owned, const Fishing& by_flow, double whole) {
  Fishing covers, adds;
  double covered = 0.0, added = 0.0;  // reach-days
  for (const CoveredFishing& one : by_flow) {
    if (!(one.lines & bit(i))) continue;
    covers.push_back(one);
    covered += one.weight;
    if (one.lines & owned & ~bit(i)) continue;
    adds.push_back(one);
    added += one.weight;
  }
  LineCoverage found{.line = line};
  if (whole > 0.0) {
    found.alone = covered / whole;
    found.only = added / whole;
  }
  found.covers = span_of(covers, covered);
  found.adds = span_of(adds, added);
  return found;
}

// Laid aside one after the other, least covering first, while the others still cover as much.
std::vector<std::size_t> earning_nothing(const Coverage& found, LineMask owned, const std::vector<CoveredWeight>& parts) {
  std::vector<std::size_t> order;
  for (std::size_t i = 0; i < found.lines.size(); ++i)
    if (owned & bit(i)) order.push_back(i);
  std::ranges::stable_sort(order, {}, [&](std::size_t i) { return found.lines[i].alone; });
  std::vector<std::size_t> aside;
  const double all = covered_by(parts, owned);
  LineMask kept = owned;
  for (const std::size_t i : order) {
    if (all - covered_by(parts, kept & ~bit(i)) > kEarnsNothing * found.fishing) continue;
    kept &= ~bit(i);
    aside.push_back(i);
  }
  return aside;
}

std::optional<std::size_t> adding_most(const Coverage& found) {
  std::optional<std::size_t> most;
  for (std::size_t i = 0; i < found.lines.size(); ++i) {
    const LineCoverage& line = found.lines[i];
    if (line.line.owned || line.only <= kEarnsNothing) continue;
    if (!most || line.only > found.lines[*most].only) most = i;
  }
  return most;
}

std::vector<std::size_t> lines_in(LineMask mask) {
  std::vector<std::size_t> lines;
  for (std::size_t i = 0; i < kMostConsidered; ++i)
    if (mask & bit(i)) lines.push_back(i);
  return lines;
}

}  // namespace

Coverage coverage(const std::vector<ConsideredLine>& lines, std::vector<CoveredFishing> fishing, int most) {
  std::ranges::stable_sort(fishing, {}, &CoveredFishing::flow);
  Coverage out;
  for (const CoveredFishing& one : fishing) out.fishing += one.weight;
  const LineMask owned = owned_mask(lines);
  for (std::size_t i = 0; i < lines.size(); ++i) out.lines.push_back(coverage_of(i, lines[i], owned, fishing, out.fishing));
  if (!(out.fishing > 0.0)) return out;

  std::vector<CoveredWeight> parts;
  for (const CoveredFishing& one : fishing) parts.push_back({one.lines, one.weight});
  parts = put_together(std::move(parts));
  out.owned = covered_by(parts, owned) / out.fishing;
  out.all = covered_by(parts, ~LineMask{0}) / out.fishing;
  for (const CoveringSet& set : best_sets(parts, owned, most))
    out.best_sets.push_back({lines_in(set.lines), set.weight / out.fishing});
  out.earn_nothing = earning_nothing(out, owned, parts);
  out.adds_most = adding_most(out);
  add_flows(out, fishing);
  return out;
}

}  // namespace floatwright
