#include "engine/temperature/past_bands.hpp"

#include <algorithm>

#include "engine/statistics/quantile.hpp"

namespace floatwright {
namespace {

constexpr Period kYear = std::chrono::hours{365 * 24};
constexpr std::size_t kFewestErrors = 60;
constexpr std::size_t kBlock =
    std::chrono::hours{10 * 24} / kBetweenOrigins;  // quantiles are looked up anew this often

}  // namespace

PastBands::PastBands(const CurveErrors& errors) : errors_(&errors) {
  for (std::size_t i = 0; i < errors.size(); ++i) {
    const auto error = errors.at(i);
    const auto recent = error ? errors.recent(i) : std::nullopt;
    const bool may = recent && *recent > TemperatureChange{};
    quotient_.push_back(may ? std::optional{in_kelvins(*error) / in_kelvins(*recent)} : std::nullopt);
  }
}

PastBands::Quotients PastBands::quotients(std::size_t i) const {
  const Instant now = errors_->origin(i);
  std::vector<double> past;
  for (std::size_t j = i; j < quotient_.size() && errors_->origin(j) >= now - kYear; ++j)
    if (quotient_[j] && errors_->origin(j) + errors_->lead() <= now) past.push_back(*quotient_[j]);
  if (past.size() < kFewestErrors) return {};
  std::sort(past.begin(), past.end());
  return {past.size(), quantile_of_sorted(past, 0.1), quantile_of_sorted(past, 0.9)};
}

std::optional<ErrorBand> PastBands::at(std::size_t i) {
  const std::size_t oldest_of_block = std::min((i / kBlock + 1) * kBlock, errors_->size()) - 1;
  if (!at_block_ || worked_out_for_ != oldest_of_block) at_block_ = quotients(oldest_of_block);
  worked_out_for_ = oldest_of_block;
  const auto recent = errors_->recent(i);
  if (!recent || at_block_->errors == 0) return std::nullopt;
  return scaled_band(*recent, at_block_->low, at_block_->high);
}

}  // namespace floatwright
