#include "engine/temperature/hourly_temperatures.hpp"

#include <algorithm>

#include "engine/units/unit.hpp"

namespace floatwright {
namespace {

constexpr Period kHour = std::chrono::hours{1};

std::optional<Temperature> reading_at(const Series<Temperature>& record, Instant t) {
  if (t < record.times.front() && record.times.front() - t <= kHour) return record.values.front();
  const auto value = value_at(record, t);
  return value ? std::optional{*value} : std::nullopt;
}

}  // namespace

HourlyTemperatures::HourlyTemperatures(const Series<Temperature>& record) {
  const Instant newest = record.times.back();
  const auto hours = (newest - record.times.front()) / kHour + 1;  // one of them before the first reading, or upon it
  first_ = newest - kHour * hours;
  sum_.push_back(0.0);
  known_.push_back(0);
  for (Instant t = first_; t <= newest; t += kHour) {
    values_.push_back(reading_at(record, t));
    sum_.push_back(sum_.back() + (values_.back() ? in_celsius(*values_.back()) : 0.0));
    known_.push_back(known_.back() + (values_.back() ? 1 : 0));
  }
}

std::optional<Temperature> HourlyTemperatures::at(Instant t) const {
  if (t < first_ || t > newest()) return std::nullopt;
  const auto before = static_cast<std::size_t>((t - first_) / kHour);
  const Period into = (t - first_) % kHour;
  if (into == Period{} || !values_[before]) return values_[before];
  if (!values_[before + 1]) return std::nullopt;
  return *values_[before] + duration(into) / duration(kHour) * (*values_[before + 1] - *values_[before]);
}

std::optional<Temperature> HourlyTemperatures::mean(Instant t, int hours) const {
  if (t < first_ || t > newest()) return std::nullopt;
  const auto end = static_cast<std::ptrdiff_t>((t - first_) / kHour) + 1;
  const auto begin = static_cast<std::size_t>(std::max<std::ptrdiff_t>(end - hours, 0));
  const auto last = static_cast<std::size_t>(end);
  const std::ptrdiff_t known = known_[last] - known_[begin];
  if (5 * known < 4 * hours) return std::nullopt;
  return celsius((sum_[last] - sum_[begin]) / static_cast<double>(known));
}

}  // namespace floatwright
