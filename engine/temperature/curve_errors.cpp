#include "engine/temperature/curve_errors.hpp"

#include <cmath>

#include "engine/units/unit.hpp"

namespace floatwright {
namespace {

constexpr std::size_t kOriginsADay = std::chrono::hours{24} / kBetweenOrigins;
constexpr std::size_t kOriginsKept = kRecentErrors / kBetweenOrigins;
constexpr int kFewestErrors = 15;  // five days of them

std::optional<TemperatureChange> error_of(const HourlyTemperatures& record, std::span<const TunedTemperatureLead> leads,
                                          Instant t, Period lead) {
  const auto seen = record.at(t + lead);
  const auto origin = seen ? CurveOrigin::at(record, t) : std::nullopt;
  const auto forecast = origin ? origin->ahead(lead, leads) : std::nullopt;
  return forecast ? std::optional{*seen - *forecast} : std::nullopt;
}

}  // namespace

CurveErrors::CurveErrors(const HourlyTemperatures& record, std::span<const TunedTemperatureLead> leads, Period lead,
                         Instant earliest)
    : newest_(record.newest()), lead_(lead) {
  for (Instant t = newest_; t >= earliest; t -= kBetweenOrigins) error_.push_back(error_of(record, leads, t, lead));
}

std::optional<TemperatureChange> CurveErrors::recent(std::size_t i) const {
  const auto newest_known = i + static_cast<std::size_t>((lead_ + kBetweenOrigins - Period{1}) / kBetweenOrigins);
  const std::size_t end = std::min(size(), newest_known + kOriginsKept);
  double all = 0.0, alike = 0.0;  // C
  int n = 0, n_alike = 0;
  for (std::size_t j = newest_known; j < end; ++j) {
    if (!error_[j]) continue;
    const double size = std::abs(in_kelvins(*error_[j]));
    all += size;
    ++n;
    if ((j - i + 1) % kOriginsADay > 2) continue;
    alike += size;
    ++n_alike;
  }
  return n_alike < kFewestErrors ? std::nullopt : std::optional{kelvins((all / n + alike / n_alike) / 2.0)};
}

}  // namespace floatwright
