#include "engine/temperature/gauge_curve.hpp"

#include <algorithm>

#include "engine/forecast/local_clock.hpp"
#include "engine/temperature/air_shift.hpp"
#include "engine/temperature/curve_band.hpp"
#include "engine/units/unit.hpp"

namespace floatwright {
namespace {

constexpr Period kTooOld = std::chrono::hours{48};
constexpr Period kLookedAt = std::chrono::hours{57 * 24};  // 30-day means at the origins of the last 20 days' errors

Series<Temperature> looked_at(Series<Temperature> record) {
  if (record.empty()) return record;
  const auto first = std::lower_bound(record.times.begin(), record.times.end(), record.times.back() - kLookedAt);
  record.values.erase(record.values.begin(), record.values.begin() + (first - record.times.begin()));
  record.times.erase(record.times.begin(), first);
  return record;
}

// Inside the record: a hole is crossed by a straight line, before the first reading the first is held.
Temperature past(const Series<Temperature>& record, Instant t) {
  if (t <= record.times.front()) return record.values.front();
  return *value_at(record, t, record.times.back() - record.times.front() + Period{1});
}

// The shares that were fitted hold for nothing less than all terms.
std::optional<TunedTemperature> usable(const std::optional<TunedTemperature>& tuned, const CurveOrigin& newest) {
  return tuned && !tuned->leads.empty() && newest.has_all_terms() ? tuned : std::nullopt;
}

TemperatureChange shift(const CurveHelp& help, Instant from, Instant to) {
  const auto air = air_change(help.air, from, to);
  if (!air) return {};
  return (help.tuned ? help.tuned->air_share.value_or(help.air_share) : help.air_share) * *air;
}

}  // namespace

Series<Temperature> up_to(const Series<Temperature>& record, Instant now) {
  const auto n = std::upper_bound(record.times.begin(), record.times.end(), now) - record.times.begin();
  return {{record.times.begin(), record.times.begin() + n}, {record.values.begin(), record.values.begin() + n}};
}

Measured<TemperatureCurve> gauge_curve(const Series<Temperature>& whole_record, const TimeGrid& grid, Instant now,
                                       const CurveHelp& help) {
  const Series<Temperature> record = looked_at(up_to(whole_record, now));
  if (record.empty()) return Absent{"no usable water temperature"};
  const Instant newest = record.times.back();
  if (now - newest > kTooOld) return Absent{"no water temperature since " + hour_and_day(newest, help.time_zone)};
  const Absent too_few{"too few readings in the last two days to carry the daily curve on"};
  const HourlyTemperatures hourly(record);
  const auto origin = CurveOrigin::at(hourly, newest);
  if (!origin && grid.last() > newest) return too_few;
  const auto tuned = origin ? usable(help.tuned, *origin) : std::nullopt;
  const auto bands = origin ? curve_bands(hourly, tuned) : std::vector<BandAtLead>{};
  TemperatureCurve curve;
  for (std::size_t i = 0; i < grid.count; ++i) {
    const Instant t = grid.at(i);
    if (t <= newest) {
      curve.push_back({past(record, t), past(record, t), past(record, t)});
      continue;
    }
    const auto ahead = origin->ahead(t - newest, tuned ? tuned->leads : untuned_leads());
    if (!ahead) return too_few;
    const Temperature middle = *ahead + shift(help, newest, t);
    const ErrorBand band = band_at(bands, t - newest);
    curve.push_back({middle + band.low, middle, middle + band.high});
  }
  return curve;
}

}  // namespace floatwright
