#include "engine/coverage/days_of_record.hpp"

#include <map>
#include <optional>

#include "engine/trip/local_time.hpp"

namespace floatwright {
namespace {

constexpr double kEnoughHours = 0.75;  // of the day's; judgement
constexpr Period kHour = std::chrono::hours{1};

// Sums need plain numbers: m3/s and C.
double plain(Discharge value) { return in_cubic_metres_per_second(value); }
double plain(Temperature value) { return in_celsius(value); }
void set(Discharge& value, double number) { value = cubic_metres_per_second(number); }
void set(Temperature& value, double number) { value = celsius(number); }

template <class T>
std::optional<T> mean_of_day(const Series<T>& readings, const LocalDay& day) {
  double sum = 0.0;
  int known = 0, hours = 0;
  for (Instant t = day.start; t < day.end; t += kHour) {
    ++hours;
    const Measured<T> value = value_at(readings, t);
    if (!value) continue;
    sum += plain(*value);
    ++known;
  }
  if (hours == 0 || known < kEnoughHours * hours) return std::nullopt;
  T mean;
  set(mean, sum / known);
  return mean;
}

template <class T>
Series<T> in_days(const Series<T>& daily, const Series<T>& readings, const std::string& time_zone) {
  std::map<Instant, T> days;
  for (std::size_t i = 0; i < daily.size(); ++i) days.emplace(daily.times[i], daily.values[i]);
  if (!readings.empty()) {
    const std::chrono::sys_days first{local_date(readings.times.front(), time_zone)};
    const std::chrono::sys_days last{local_date(readings.times.back(), time_zone)};
    for (auto date = first; date <= last; date += std::chrono::days{1}) {
      if (days.contains(date)) continue;
      if (const auto mean = mean_of_day(readings, local_day(date, time_zone))) days.emplace(date, *mean);
    }
  }
  Series<T> all;
  for (const auto& [date, mean] : days) {
    all.times.push_back(date);
    all.values.push_back(mean);
  }
  return all;
}

}  // namespace

Series<Discharge> days_of_record(const Series<Discharge>& daily, const Series<Discharge>& readings,
                                 const std::string& time_zone) {
  return in_days(daily, readings, time_zone);
}

Series<Temperature> days_of_record(const Series<Temperature>& daily, const Series<Temperature>& readings,
                                   const std::string& time_zone) {
  return in_days(daily, readings, time_zone);
}

}  // namespace floatwright
