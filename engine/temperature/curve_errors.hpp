#pragma once
// How far the curve has been off at one lead: forecasts made every 2 h of the record, each with what was then known,
// beside what came. Errors are larger in some weeks than in others and larger by day than by night, so what a band
// grows by is the mean of the last 20 days, half of it of all hours, half of those within 2 h of this time of day.
#include <optional>
#include <span>

#include "engine/temperature/curve_ahead.hpp"

namespace floatwright {

inline constexpr Period kBetweenOrigins = std::chrono::hours{2};
inline constexpr Period kRecentErrors = std::chrono::hours{20 * 24};

class CurveErrors {
 public:
  // Origins from the newest reading backward, none before `earliest`.
  CurveErrors(const HourlyTemperatures& record, std::span<const TunedTemperatureLead> leads, Period lead,
              Instant earliest);

  [[nodiscard]] std::size_t size() const { return error_.size(); }
  [[nodiscard]] Instant origin(std::size_t i) const { return newest_ - kBetweenOrigins * static_cast<Period::rep>(i); }
  [[nodiscard]] Period lead() const { return lead_; }
  // What came less what was forecast.
  [[nodiscard]] std::optional<TemperatureChange> at(std::size_t i) const { return error_[i]; }
  // That mean |error|, of outcomes known at origin i; none where under 15 are of its time of day.
  [[nodiscard]] std::optional<TemperatureChange> recent(std::size_t i) const;

 private:
  Instant newest_;
  Period lead_;
  std::vector<std::optional<TemperatureChange>> error_;  // newest origin first
};

}  // namespace floatwright
