#include "engine/forecast/daily_misses.hpp"

#include <algorithm>
#include <array>
#include <chrono>
#include <cmath>

#include "engine/statistics/quantile.hpp"

namespace floatwright {
namespace {

constexpr std::size_t kFewestErrors = 15;
constexpr std::size_t kKept = 730;       // days
constexpr double kRecentPower = 0.6;     // judgement
constexpr double kLeastMeanMiss = 1e-4;  // a record that stands still has a band all the same
constexpr std::array kStatesThatErr{FlowState::Rising, FlowState::EdgingUp, FlowState::Falling};

// Origins whose outcome was known at the end of day t: those before this one.
std::size_t known_before(std::size_t t, int days) {
  const auto ahead = static_cast<std::size_t>(days);
  return t + 1 > ahead ? t + 1 - ahead : 0;
}

Period lead_of(int days) { return std::chrono::days{days}; }

std::optional<PastErrors> ranked(std::vector<double> scaled, std::optional<FlowState> state, int days) {
  if (scaled.size() < kFewestErrors) return std::nullopt;
  return PastErrors{.state = state,
                    .lead = lead_of(days),
                    .count = scaled.size(),
                    .low = quantile_of_next(scaled, 0.1),
                    .high = quantile_of_next(scaled, 0.9)};
}

}  // namespace

double miss_scale(double all, double recent) {
  if (std::isnan(all + recent)) return all + recent;
  return std::pow(std::max(all, kLeastMeanMiss), 1.0 - kRecentPower) *
         std::pow(std::max(recent, kLeastMeanMiss), kRecentPower);
}

double mean_miss(const DailyMisses& misses, std::size_t t, std::size_t last) {
  const std::size_t known = std::min(known_before(t, misses.days), misses.miss.size());
  return mean_size(misses.miss, known > last ? known - last : 0, known);
}

std::vector<double> miss_scales(const DailyMisses& misses) {
  std::vector<double> scales;
  double sum = 0.0;
  std::size_t count = 0, summed = 0;
  for (std::size_t t = 0; t < misses.miss.size(); ++t) {
    for (; summed < known_before(t, misses.days); ++summed) {
      if (std::isnan(misses.miss[summed])) continue;
      sum += std::abs(misses.miss[summed]);
      ++count;
    }
    scales.push_back(miss_scale(sum / static_cast<double>(count), mean_miss(misses, t, kRecentDays)));
  }
  return scales;
}

std::vector<PastErrors> past_errors(const DailyMisses& misses, const std::vector<double>& scales, std::size_t t) {
  const std::size_t known = std::min(known_before(t, misses.days), misses.miss.size());
  const auto scaled_in = [&](std::optional<FlowState> state) {
    std::vector<double> scaled;
    for (std::size_t s = known > kKept ? known - kKept : 0; s < known; ++s) {
      const double error = misses.miss[s] / scales[s];
      if (!std::isnan(error) && (!state || misses.state[s] == *state)) scaled.push_back(error);
    }
    return scaled;
  };
  std::vector<PastErrors> errors;
  if (const auto pooled = ranked(scaled_in(std::nullopt), std::nullopt, misses.days)) errors.push_back(*pooled);
  for (const FlowState state : kStatesThatErr)
    if (const auto of_state = ranked(scaled_in(state), state, misses.days)) errors.push_back(*of_state);
  return errors;
}

std::optional<LnBand> past_band(const std::vector<PastErrors>& errors, FlowState state, int days) {
  const auto row = [&](std::optional<FlowState> wanted) {
    return std::find_if(errors.begin(), errors.end(),
                        [&](const PastErrors& e) { return e.state == wanted && e.lead == lead_of(days); });
  };
  auto found = row(state);
  if (found == errors.end()) found = row(std::nullopt);
  if (found == errors.end()) return std::nullopt;
  return LnBand{std::min(found->low, 0.0), std::max(found->high, 0.0)};
}

}  // namespace floatwright
