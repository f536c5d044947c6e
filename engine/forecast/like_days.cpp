#include "engine/forecast/like_days.hpp"

#include <algorithm>
#include <cmath>
#include <limits>
#include <utility>

#include "engine/statistics/quantile.hpp"

namespace floatwright {
namespace {

constexpr std::array<double, 4> kChangeWeights{1.0, 0.7, 0.5, 0.35};
constexpr double kLevelWeight = 0.1, kFarthestLevel = 3.0;
constexpr std::size_t kFewest = 9, kMost = 40;

std::size_t neighbours_of(std::size_t known) {
  const auto root = static_cast<std::size_t>(std::sqrt(static_cast<double>(known)));
  return std::min(known, std::clamp(root, kFewest, kMost));
}

}  // namespace

LikeDays::LikeDays(const DailyRecord& record, double ln_median) : ln_flow_(record.ln_flow) {
  for (std::size_t t = 0; t < record.size(); ++t) {
    Pattern& pattern = patterns_.emplace_back();
    for (std::size_t back = 0; back < kChangeWeights.size(); ++back)
      pattern[back] = kChangeWeights[back] * (back <= t ? record.change(t - back) : record.change(0));
    pattern.back() = kLevelWeight * std::clamp(record.ln_flow[t] - ln_median, -kFarthestLevel, kFarthestLevel);
  }
}

LikeDays::Change LikeDays::after(std::size_t t, int days) const {
  const auto ahead = static_cast<std::size_t>(days);
  std::vector<std::pair<double, double>> past;  // distance squared, change
  for (std::size_t s = 0; s + ahead <= t; ++s) {
    double distance = 0.0;
    for (std::size_t i = 0; i < patterns_[t].size(); ++i) {
      const double apart = patterns_[t][i] - patterns_[s][i];
      distance += apart * apart;
    }
    const double change = ln_flow_[s + ahead] - ln_flow_[s];
    if (!std::isnan(distance + change)) past.emplace_back(distance, change);
  }
  if (past.empty()) return {std::numeric_limits<double>::quiet_NaN(), 0};
  const auto nearest = static_cast<std::ptrdiff_t>(neighbours_of(past.size()));
  std::nth_element(past.begin(), past.begin() + nearest - 1, past.end());
  std::vector<double> changes;
  for (auto row = past.begin(); row != past.begin() + nearest; ++row) changes.push_back(row->second);
  return {median(std::move(changes)), past.size()};
}

}  // namespace floatwright
