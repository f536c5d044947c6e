#pragma once
// The daily curve of water temperature at a gauge carried forward: T(t+h) = T(t+h-24k h) + b . x, k the least whole
// days that make it known, x the terms of tuned_temperature.hpp. Untuned only the first term stands, the change since
// yesterday, with shares of judgement: 1 at lead 0, then 0.85, 0.65, 0.45, 0.35, 0 at 3, 6, 12, 18, 24 h; on the second
// day it begins at 1 again, so that the curve has no step, and is 0.2 at 36 h, 0 at 48 h. Beyond 48 h the second day is
// repeated.
#include <optional>
#include <span>

#include "engine/temperature/hourly_temperatures.hpp"
#include "engine/temperature/tuned_temperature.hpp"

namespace floatwright {

// 3, 6, 12, 18, 24, 36, 48 h with the stated shares.
[[nodiscard]] const std::vector<TunedTemperatureLead>& untuned_leads();

// What is known at one instant and holds for all leads.
class CurveOrigin {
 public:
  // None where the reading at `t` or the one a day before is not known.
  [[nodiscard]] static std::optional<CurveOrigin> at(const HourlyTemperatures& record, Instant t);

  // Whether all terms are known (10 days of record): if not, the untuned shares stand for any leads.
  [[nodiscard]] bool has_all_terms() const { return all_; }
  // T(t+h-24k h); none where it is not known.
  [[nodiscard]] std::optional<Temperature> same_hour_before(Period lead) const;
  [[nodiscard]] TemperatureCoefficients terms(Period lead) const;
  [[nodiscard]] std::optional<Temperature> ahead(Period lead, std::span<const TunedTemperatureLead> leads) const;

 private:
  CurveOrigin(const HourlyTemperatures& record, Instant t) : record_(&record), t_(t) {}
  void add_slow_terms();
  [[nodiscard]] std::optional<TemperatureChange> five_days_against_one(Period lead) const;

  const HourlyTemperatures* record_;
  Instant t_;
  TemperatureCoefficients slow_{};  // the terms that are the same at all leads
  bool all_ = false;
};

}  // namespace floatwright
