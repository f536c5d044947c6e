#include "engine/routing/judge_lag.hpp"

#include <algorithm>
#include <cmath>
#include <limits>

#include "engine/routing/closing.hpp"
#include "engine/routing/mean_flow.hpp"
#include "engine/statistics/quantile.hpp"
#include "engine/statistics/scores.hpp"

namespace floatwright {
namespace {

constexpr Period kLongestForDailyMean = std::chrono::hours{6};

// Straight lines across what is not known, level at the ends.
std::vector<Discharge> bridged(const std::vector<double>& flow) {
  std::vector<Discharge> out;
  std::size_t known = flow.size();  // the last row known so far
  for (std::size_t i = 0; i < flow.size(); ++i) {
    out.push_back(Discharge::from_si(flow[i]));
    if (std::isnan(flow[i])) continue;
    const double before = known == flow.size() ? flow[i] : flow[known];
    const std::size_t first = known == flow.size() ? 0 : known + 1;
    for (std::size_t k = first; k < i; ++k) {
      const double share = known == flow.size() ? 1.0 : static_cast<double>(k - known) / static_cast<double>(i - known);
      out[k] = Discharge::from_si(std::lerp(before, flow[i], share));
    }
    known = i;
  }
  if (known == flow.size()) return {};
  for (std::size_t k = known + 1; k < flow.size(); ++k) out[k] = out[known];
  return out;
}

std::vector<double> with_inflow(const RoutedPart& part, const std::vector<Discharge>& arriving, double growth) {
  std::vector<double> flow;  // m3/s
  if (part.step > kLongestForDailyMean) {
    for (const Discharge q : arriving) flow.push_back(growth * q.si());
    return flow;
  }
  std::vector<Discharge> entering;
  for (std::size_t i = 0; i < arriving.size(); ++i) entering.push_back(part.below[i] - arriving[i]);
  entering = daily_mean(entering, part.step);
  for (std::size_t i = 0; i < arriving.size(); ++i) flow.push_back((arriving[i] + entering[i]).si());
  return flow;
}

}  // namespace

RiseScore rise_score(const std::vector<MatchedChange>& changes, const std::function<Duration(Discharge)>& lag,
                     FrontMargin judged, FrontMargin told) {
  RiseScore score;
  std::vector<double> errors;  // s
  for (const MatchedChange& change : changes) {
    if (!change.above.rise()) continue;
    const Duration expected = lag(change.flow()), came = change.lag();
    errors.push_back(std::abs((came - expected).si()));
    score.within_quarter_hour += errors.back() <= kLeastMargin.si() ? 1.0 : 0.0;
    score.within_margin += came >= judged.earliest * expected && came <= judged.latest * expected ? 1.0 : 0.0;
    score.before_earliest += came < told.first(expected) ? 1.0 : 0.0;
  }
  if (errors.empty()) return score;
  score.rises = static_cast<int>(errors.size());
  score.median_error = Duration::from_si(median(errors));
  score.within_quarter_hour /= score.rises;
  score.within_margin /= score.rises;
  score.before_earliest /= score.rises;
  return score;
}

RoutedPart routed_part(const PairedFlows& flows, std::size_t first, std::size_t last) {
  const auto cut = [&](const std::vector<double>& row) {
    return std::vector<double>(row.begin() + static_cast<std::ptrdiff_t>(first),
                               row.begin() + static_cast<std::ptrdiff_t>(last));
  };
  const std::vector<double> above = cut(flows.above), below = cut(flows.below);
  RoutedPart part{flows.grid.step, bridged(above), bridged(below), {}};
  if (part.above.empty() || part.below.empty()) return {};
  const auto day = static_cast<std::size_t>(std::max<Period::rep>(1, std::chrono::hours{24} / part.step));
  std::size_t since_gap = day;
  for (std::size_t i = 0; i < above.size(); ++i) {
    since_gap = std::isnan(above[i]) ? 0 : since_gap + 1;
    part.known.push_back(since_gap >= day && !std::isnan(below[i]));
  }
  return part;
}

RoutedScore routed_score(const RoutedPart& part, const std::vector<Discharge>& arriving, double growth) {
  std::vector<double> made = with_inflow(part, arriving, growth), came;
  for (std::size_t i = 0; i < made.size(); ++i)
    came.push_back(part.known[i] ? part.below[i].si() : std::numeric_limits<double>::quiet_NaN());
  const Judged pairs = usable_pairs(made, came, Keep::Finite);
  RoutedScore score;
  if (pairs.size() == 0) return score;
  score.nash_sutcliffe = nash_sutcliffe(pairs);
  if (const auto parts = kling_gupta_2009(pairs)) score.kling_gupta = parts->efficiency();
  return score;
}

double growth_between(const RoutedPart& part) {
  const Discharge above = mean_flow(part.above);
  return above > Discharge{} ? mean_flow(part.below) / above : 1.0;
}

}  // namespace floatwright
