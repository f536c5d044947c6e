#pragma once
// The water temperature at one gauge over the hours of a plan: the past as observed, the rest the daily curve carried
// on from the newest reading, shifted by the air's forecast. A record of daily means gives the level only.
#include <optional>

#include "engine/readings/gauge_record.hpp"
#include "engine/readings/weather.hpp"
#include "engine/temperature/tuned_temperature.hpp"
#include "engine/units/measured.hpp"
#include "engine/units/per_case.hpp"

namespace floatwright {

using TemperatureCurve = std::vector<PerCase<Temperature>>;  // one per grid step

// The readings that were known at `now`.
[[nodiscard]] Series<Temperature> up_to(const Series<Temperature>& record, Instant now);

// What else a curve is made from beside the readings.
struct CurveHelp {
  std::optional<TunedTemperature> tuned{};
  Series<Temperature> air{};  // empty: no forecast of the air
  double air_share = 0.0;     // where none was fitted
  std::string time_zone{};    // in which hours are told
};

// Absent "no water temperature since ..." past 48 h, or where no day before the newest reading is known.
[[nodiscard]] Measured<TemperatureCurve> gauge_curve(const Series<Temperature>& record, const TimeGrid& grid,
                                                     Instant now, const CurveHelp& help = {});

// The newest daily mean held, with a band that holds its change from day to day (of the record's own past, else 1.5 C a
// day, judgement) and 3 C more for the hours of a day, which means do not show (judgement). Absent past 48 h.
[[nodiscard]] Measured<TemperatureCurve> curve_of_daily_means(const Series<Temperature>& means, const TimeGrid& grid,
                                                              Instant now);

// The better of the two that a gauge has.
struct GaugeCurve {
  Measured<TemperatureCurve> cases;
  bool daily_means = false;
};

}  // namespace floatwright
