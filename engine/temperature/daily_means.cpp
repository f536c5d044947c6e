#include <date/date.h>

#include <cmath>

#include "engine/statistics/quantile.hpp"
#include "engine/temperature/curve_band.hpp"
#include "engine/temperature/gauge_curve.hpp"
#include "engine/units/unit.hpp"

namespace floatwright {
namespace {

constexpr Period kDay = std::chrono::hours{24};
constexpr Period kTooOld = std::chrono::hours{48};
constexpr std::size_t kEnoughChanges = 20;
constexpr double kStatedChange = 1.5;  // C from one day to the next
constexpr double kHoursOfADay = 3.0;   // C either way

// P10 and P90 of what the means moved by over so many days.
ErrorBand change_over(const Series<Temperature>& means, int days) {
  std::vector<double> changes;  // C
  for (std::size_t i = 0, j = 0; i < means.size(); ++i) {
    while (j < means.size() && means.times[j] - means.times[i] < kDay * days) ++j;
    if (j < means.size() && means.times[j] - means.times[i] == kDay * days)
      changes.push_back(in_kelvins(means.values[j] - means.values[i]));
  }
  if (changes.size() >= kEnoughChanges)
    return {kelvins(std::min(quantile(changes, 0.1), 0.0)), kelvins(std::max(quantile(changes, 0.9), 0.0))};
  const double stated = kStatedChange * std::sqrt(days);
  return {kelvins(-stated), kelvins(stated)};
}

}  // namespace

Measured<TemperatureCurve> curve_of_daily_means(const Series<Temperature>& means, const TimeGrid& grid, Instant now) {
  if (means.empty()) return Absent{"no usable water temperature"};
  const Instant whole_day = means.times.back() + kDay;  // by when the newest day is over
  if (now - whole_day > kTooOld)
    return Absent{"no daily water temperature since " + date::format("%Y-%m-%d", means.times.back())};
  TemperatureCurve curve;
  for (std::size_t i = 0; i < grid.count; ++i) {
    const int days = std::max(0, static_cast<int>((grid.at(i) - means.times.back()) / kDay));
    const ErrorBand change = days == 0 ? ErrorBand{} : change_over(means, days);
    const Temperature mean = means.values.back();
    curve.push_back({mean + change.low + kelvins(-kHoursOfADay), mean, mean + change.high + kelvins(kHoursOfADay)});
  }
  return curve;
}

}  // namespace floatwright
