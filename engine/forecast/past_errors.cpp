#include "engine/forecast/past_errors.hpp"

#include <algorithm>

#include "engine/statistics/quantile.hpp"

namespace floatwright {
namespace {

LnBand band_of(const std::vector<double>& ascending) {
  return {quantile_of_sorted(ascending, 0.1), quantile_of_sorted(ascending, 0.9)};
}

}  // namespace

std::optional<LnBand> band_from(const ForecastSkill& skill, FlowState state, Period lead) {
  std::optional<LnBand> of_all;
  for (const PastErrors& errors : skill.errors) {
    if (errors.lead != lead || errors.count < kEnoughErrors) continue;
    if (errors.state == state) return LnBand{errors.low, errors.high};
    if (!errors.state) of_all = LnBand{errors.low, errors.high};
  }
  return of_all;
}

void ErrorsOfLead::add(FlowState state, Instant known, double error) {
  for (Kept* kept : {&errors_[std::nullopt], &errors_[state]}) {
    kept->by_time.emplace_back(known, error);
    kept->ascending.insert(std::lower_bound(kept->ascending.begin(), kept->ascending.end(), error), error);
  }
}

void ErrorsOfLead::forget_before(Instant t) {
  for (auto& [state, kept] : errors_)
    while (kept.by_time.size() > kEnoughErrors && kept.by_time.front().first < t) {
      const double error = kept.by_time.front().second;
      kept.ascending.erase(std::lower_bound(kept.ascending.begin(), kept.ascending.end(), error));
      kept.by_time.pop_front();
    }
}

std::optional<LnBand> ErrorsOfLead::band(FlowState state) const {
  for (const std::optional<FlowState> asked : {std::optional(state), std::optional<FlowState>{}}) {
    const auto kept = errors_.find(asked);
    if (kept != errors_.end() && kept->second.ascending.size() >= kEnoughErrors) return band_of(kept->second.ascending);
  }
  return std::nullopt;
}

std::vector<PastErrors> ErrorsOfLead::summary(Period lead) const {
  std::vector<PastErrors> rows;
  for (const auto& [state, kept] : errors_) {
    const LnBand band = band_of(kept.ascending);
    rows.push_back({state, lead, kept.ascending.size(), band.low, band.high});
  }
  return rows;
}

}  // namespace floatwright
