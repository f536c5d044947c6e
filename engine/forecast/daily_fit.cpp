#include "engine/forecast/daily_fit.hpp"

#include <algorithm>
#include <cmath>
#include <limits>

#include "engine/forecast/daily_change.hpp"
#include "engine/statistics/quantile.hpp"
#include "engine/statistics/shrunk_regression.hpp"

namespace floatwright {
namespace {

constexpr double kHole = std::numeric_limits<double>::quiet_NaN();
constexpr double kHeaviest = 5.0;  // times the median flow; floods weigh no more
constexpr std::size_t kBlocks = 5;

double sum_of(const DailyRegressors& row) {
  double sum = 0.0;
  for (const double x : row) sum += x;
  return sum;
}

}  // namespace

double ln_median_of(const DailyRecord& own, DaySpan span) {
  std::vector<double> known;
  for (std::size_t t = span.from; t < span.to; ++t)
    if (!std::isnan(own.ln_flow[t])) known.push_back(own.ln_flow[t]);
  return known.empty() ? 0.0 : median(std::move(known));
}

DailyWay daily_way(const DailyRecord& own, const DailyRecord* above, DaySpan fitted_to) {
  DailyWay way{.data = {.own = own, .above = {}, .ln_median = ln_median_of(own, fitted_to)}, .like = {}};
  if (above != nullptr)
    way.data.above = on_the_days_of(own, *above);
  else
    way.like.emplace(own, way.data.ln_median);
  return way;
}

DailyRegressors fitted_to(const DailyWay& way, int days, DaySpan part, DaySpan but) {
  const auto ahead = static_cast<std::size_t>(days);
  const DailyRecord& own = way.data.own;
  RegressionRows rows{.width = kDailyTerms, .regressors = {}, .outcomes = {}, .weights = {}};
  for (std::size_t t = part.from; t + ahead < part.to; ++t) {
    if (t + ahead >= but.from && t < but.to) continue;
    const DailyRegressors row = daily_regressors(way.data, t);
    const double outcome = own.ln_flow[t + ahead] - own.ln_flow[t];
    if (std::isnan(sum_of(row) + outcome)) continue;
    rows.regressors.insert(rows.regressors.end(), row.begin(), row.end());
    rows.outcomes.push_back(outcome);
    rows.weights.push_back(std::min(std::exp(own.ln_flow[t] - way.data.ln_median), kHeaviest));
  }
  const DailyRegressors prior = daily_prior(days, way.data.above.has_value());
  const std::vector<double> b = shrunk_least_absolute(rows, prior);
  DailyRegressors out{};
  std::copy_n(b.begin(), out.size(), out.begin());
  return out;
}

std::vector<double> forecast_by_turns(const DailyWay& way, int days, DaySpan part) {
  std::vector<double> changes(way.data.own.size(), kHole);
  for (std::size_t block = 0; block < kBlocks; ++block) {
    const DaySpan left_out{part.from + part.size() * block / kBlocks, part.from + part.size() * (block + 1) / kBlocks};
    const DailyRegressors b = fitted_to(way, days, part, left_out);
    for (std::size_t t = left_out.from; t < left_out.to; ++t)
      changes[t] = fitted_change(way.data, way.like ? &*way.like : nullptr, b, t, days);
  }
  return changes;
}

DailyMisses misses_of(const DailyRecord& own, const std::vector<double>& changes, int days) {
  const auto ahead = static_cast<std::size_t>(days);
  DailyMisses out{.days = days, .miss = std::vector<double>(own.size(), kHole), .state = {}};
  for (std::size_t t = 0; t < own.size(); ++t) {
    out.state.push_back(errs_as(daily_state(own.change(t))));
    if (t + ahead < own.size()) out.miss[t] = own.ln_flow[t + ahead] - own.ln_flow[t] - changes[t];
  }
  return out;
}

}  // namespace floatwright
