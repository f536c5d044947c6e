#include "engine/routing/matched_changes.hpp"

#include <algorithm>
#include <cmath>

#include "engine/routing/even_flows.hpp"

namespace floatwright {
namespace {

constexpr double kWindow = 0.4;  // of the lag looked for
constexpr Duration kLeastWindow = Duration::from_si(5400.0);
constexpr double kAlike = 2.0;  // times larger or smaller

// What is unknown counts as no change.
std::vector<double> changes_over(const std::vector<double>& flow, std::size_t steps) {
  std::vector<double> change(flow.size() - steps);
  for (std::size_t i = 0; i < change.size(); ++i) {
    const double d = flow[i + steps] - flow[i];
    change[i] = std::isnan(d) ? 0.0 : d;
  }
  return change;
}

double square_sum(const std::vector<double>& values) {
  double sum = 0.0;
  for (const double v : values) sum += v * v;
  return sum;
}

double product_sum(const std::vector<double>& above, const std::vector<double>& below, std::ptrdiff_t lag) {
  const auto n = static_cast<std::ptrdiff_t>(above.size());
  double sum = 0.0;
  for (std::ptrdiff_t i = std::max<std::ptrdiff_t>(0, -lag); i < std::min(n, n - lag); ++i)
    sum += above[static_cast<std::size_t>(i)] * below[static_cast<std::size_t>(i + lag)];
  return sum;
}

bool alike(const FlowChange& above, const FlowChange& below, double usual_ratio) {
  const double ratio = below.size() / above.size() / usual_ratio;
  return ratio >= 1.0 / kAlike && ratio <= kAlike;
}

}  // namespace

PairedFlows paired_flows(const Series<Discharge>& above, const Series<Discharge>& below) {
  PairedFlows flows;
  if (usual_step(above) <= Period{} || usual_step(below) <= Period{}) return flows;
  flows.grid =
      even_grid(std::max(above.times.front(), below.times.front()), std::min(above.times.back(), below.times.back()),
                std::max(usual_step(above), usual_step(below)));
  flows.above = on_grid(above, flows.grid);
  flows.below = on_grid(below, flows.grid);
  return flows;
}

std::optional<MovesTogether> moves_together(const PairedFlows& flows, Duration earliest, Duration latest,
                                            Duration window) {
  const Duration step = duration(flows.grid.step);
  const auto steps = static_cast<std::size_t>(std::max(1.0, std::round(window / step)));
  if (flows.grid.count <= steps + 1) return std::nullopt;
  const auto above = changes_over(flows.above, steps), below = changes_over(flows.below, steps);
  const double scale = std::sqrt(square_sum(above) * square_sum(below));
  if (!(scale > 0.0)) return std::nullopt;
  std::optional<MovesTogether> best;
  const auto last = static_cast<std::ptrdiff_t>(std::ceil(latest / step));
  for (auto lag = static_cast<std::ptrdiff_t>(std::floor(earliest / step)); lag <= last; ++lag) {
    const double correlation = product_sum(above, below, lag) / scale;
    if (!best || correlation > best->correlation) best = {step * static_cast<double>(lag), correlation};
  }
  return best;
}

std::vector<MatchedChange> matched_changes(const std::vector<FlowChange>& above, const std::vector<FlowChange>& below,
                                           Duration about, double usual_ratio, Period step) {
  const Duration window =
      std::max({kLeastWindow, kWindow * about, 1.5 * duration(step)}, [](Duration a, Duration b) { return a < b; });
  struct Candidate {
    double off;  // s
    std::size_t a, b;
  };
  std::vector<Candidate> candidates;
  std::size_t first = 0;
  for (std::size_t a = 0; a < above.size(); ++a) {
    while (first < below.size() && duration(below[first].half_way - above[a].half_way) < about - window) ++first;
    for (std::size_t b = first; b < below.size(); ++b) {
      const Duration off = duration(below[b].half_way - above[a].half_way) - about;
      if (off > window) break;
      if (alike(above[a], below[b], usual_ratio)) candidates.push_back({std::abs(off.si()), a, b});
    }
  }
  std::sort(candidates.begin(), candidates.end(), [](const auto& x, const auto& y) { return x.off < y.off; });
  std::vector<bool> taken_above(above.size(), false), taken_below(below.size(), false);
  std::vector<MatchedChange> pairs;
  for (const Candidate& c : candidates) {
    if (taken_above[c.a] || taken_below[c.b]) continue;
    taken_above[c.a] = taken_below[c.b] = true;
    pairs.push_back({above[c.a], below[c.b]});
  }
  std::sort(pairs.begin(), pairs.end(),
            [](const auto& x, const auto& y) { return x.above.half_way < y.above.half_way; });
  return pairs;
}

}  // namespace floatwright
