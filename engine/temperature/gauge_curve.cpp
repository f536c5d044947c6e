#include "engine/temperature/gauge_curve.hpp"

#include <date/date.h>

#include <algorithm>
#include <array>
#include <cmath>

#include "engine/units/unit.hpp"

namespace floatwright {
namespace {

constexpr Period kDay = std::chrono::hours{24};
constexpr Period kHeldBeforeTheFirst = std::chrono::hours{1};
constexpr Period kTooOld = std::chrono::hours{48};
constexpr Period kEnoughRecord = std::chrono::hours{5 * 24};
constexpr Period kBetweenOrigins = std::chrono::hours{2};
constexpr std::size_t kEnoughErrors = 20;
constexpr double kLeastBand = 0.2;  // C

struct LeadPoint {
  double lead_h, value;
};

template <std::size_t N>
double along(const std::array<LeadPoint, N>& points, double lead_h) {
  if (lead_h <= points.front().lead_h) return points.front().value;
  for (std::size_t i = 1; i < N; ++i) {
    if (lead_h > points[i].lead_h) continue;
    const double share = (lead_h - points[i - 1].lead_h) / (points[i].lead_h - points[i - 1].lead_h);
    return points[i - 1].value + share * (points[i].value - points[i - 1].value);
  }
  return points.back().value;
}

constexpr std::array<LeadPoint, 6> kFirstDay{{{0, 1.0}, {3, 0.85}, {6, 0.65}, {12, 0.45}, {18, 0.35}, {24, 0.0}}};
constexpr std::array<LeadPoint, 3> kSecondDay{{{24, 1.0}, {36, 0.2}, {48, 0.0}}};
constexpr std::array<LeadPoint, 3> kDefaultBand{{{0, kLeastBand}, {6, 0.8}, {24, 1.5}}};  // C either way

std::optional<Temperature> known(const Series<Temperature>& record, Instant t) {
  const auto value = value_at(record, t, kWidestTemperatureGap);
  return value ? std::optional{*value} : std::nullopt;
}

// As known(), and within an hour before the record begins the first reading: a record of just one day has its yesterday.
std::optional<Temperature> known_or_first(const Series<Temperature>& record, Instant t) {
  if (!record.empty() && t < record.times.front() && record.times.front() - t <= kHeldBeforeTheFirst) return record.values.front();
  return known(record, t);
}

// Linear between the two nearest of the sorted values.
double quantile(const std::vector<double>& sorted, double p) {
  const double at = p * static_cast<double>(sorted.size() - 1);
  const auto below = static_cast<std::size_t>(at);
  const std::size_t above = std::min(below + 1, sorted.size() - 1);
  return sorted[below] + (at - static_cast<double>(below)) * (sorted[above] - sorted[below]);
}

std::vector<double> past_errors(const Series<Temperature>& record, Duration lead) {
  std::vector<double> errors;  // C, observed less forecast
  const Instant newest = record.times.back();
  for (Instant origin = newest - period(lead); origin >= record.times.front() + kDay; origin -= kBetweenOrigins) {
    const auto forecast = carried_forward(record, origin, lead);
    const auto seen = known(record, origin + period(lead));
    if (forecast && seen) errors.push_back(in_kelvins(*seen - *forecast));
  }
  std::sort(errors.begin(), errors.end());
  return errors;
}

Series<Temperature> up_to(const Series<Temperature>& record, Instant now) {
  const auto n = std::upper_bound(record.times.begin(), record.times.end(), now) - record.times.begin();
  return {{record.times.begin(), record.times.begin() + n}, {record.values.begin(), record.values.begin() + n}};
}

// Inside the record: a hole is crossed by a straight line, before the first reading the first is held.
Temperature past(const Series<Temperature>& record, Instant t) {
  if (t <= record.times.front()) return record.values.front();
  return *value_at(record, t, record.times.back() - record.times.front() + Period{1});
}

}  // namespace

double carried_share(Duration lead) {
  const double h = in_hours(lead);
  return h <= 24.0 ? along(kFirstDay, h) : along(kSecondDay, h);
}

std::optional<Temperature> carried_forward(const Series<Temperature>& record, Instant origin, Duration lead) {
  if (in_hours(lead) > 48.0) return carried_forward(record, origin, lead - hours(24.0));
  const Period ahead = period(lead);
  const auto days = ahead <= Period{} ? 0 : (ahead - Period{1}) / kDay + 1;
  const auto shape = known(record, origin + ahead - kDay * days);
  const auto latest = known(record, origin), day_before = known_or_first(record, origin - kDay);
  if (!shape || !latest || !day_before) return std::nullopt;
  return *shape + carried_share(lead) * (*latest - *day_before);
}

ErrorBand error_band(const Series<Temperature>& record, Duration lead) {
  if (!record.empty() && record.times.back() - record.times.front() >= kEnoughRecord)
    if (const auto errors = past_errors(record, lead); errors.size() >= kEnoughErrors)
      return {kelvins(std::min(quantile(errors, 0.1), -kLeastBand)),
              kelvins(std::max(quantile(errors, 0.9), kLeastBand)), true};
  const double either_way = along(kDefaultBand, in_hours(lead));
  return {kelvins(-either_way), kelvins(either_way), false};
}

Measured<std::vector<PerCase<Temperature>>> gauge_curve(const Series<Temperature>& whole_record, const TimeGrid& grid,
                                                        Instant now) {
  const Series<Temperature> record = up_to(whole_record, now);
  if (record.empty()) return Absent{"no usable water temperature"};
  const Instant newest = record.times.back();
  if (now - newest > kTooOld) return Absent{"no water temperature since " + date::format("%Y-%m-%d %H:%M UTC", newest)};
  std::vector<PerCase<Temperature>> curve;
  for (std::size_t i = 0; i < grid.count; ++i) {
    const Instant t = grid.at(i);
    if (t <= newest) {
      curve.push_back({past(record, t), past(record, t), past(record, t)});
      continue;
    }
    const Duration lead = duration(t - newest);
    const auto middle = carried_forward(record, newest, lead);
    if (!middle) return Absent{"too few readings in the last two days to carry the daily curve on"};
    const ErrorBand band = error_band(record, lead);
    curve.push_back({*middle + band.low, *middle, *middle + band.high});
  }
  return curve;
}

}  // namespace floatwright
