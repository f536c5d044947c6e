#include "engine/temperature/judged_days.hpp"

#include <date/tz.h>

#include <algorithm>
#include <cmath>

#include "engine/forecast/local_clock.hpp"
#include "engine/units/unit.hpp"

namespace floatwright {
namespace {

constexpr Period kHour = std::chrono::hours{1};
constexpr Period kNamedEarlier = std::chrono::minutes{30};
constexpr double kShareOfMorning = 0.5;  // of the change since yesterday 06 h, in the untuned rule

struct LocalDay {
  date::local_days date;
  const date::time_zone* zone;  // null: UTC

  [[nodiscard]] Instant at(int hour) const {
    const auto shown = date + std::chrono::hours{hour};
    return zone == nullptr ? Instant{shown.time_since_epoch()} : zone->to_sys(shown, date::choose::earliest);
  }
  [[nodiscard]] LocalDay before() const { return {date - date::days{1}, zone}; }
};

std::vector<LocalDay> days_of(const DaysAsked& asked) {
  const date::time_zone* zone = zone_known(asked.time_zone) ? date::locate_zone(asked.time_zone) : nullptr;
  std::vector<LocalDay> days;
  const auto first = date::floor<date::days>(asked.from) + date::days{2}, last = date::floor<date::days>(asked.until);
  for (auto day = first; day < last; day += date::days{1})
    days.push_back({date::local_days{day.time_since_epoch()}, zone});
  return days;
}

std::vector<Instant> hours_of(const HourlyTemperatures& record, const LocalDay& day) {
  std::vector<Instant> hours;
  const Instant begin = day.at(0), end = LocalDay{day.date + date::days{1}, day.zone}.at(0);
  for (Instant t = record.hour_by(begin - Period{1}) + kHour; t < end; t += kHour) hours.push_back(t);
  return hours;
}

// The day's hours as a plan made at `origin` would see them; empty where one is not known.
std::vector<Temperature> seen_from(const DaysAsked& asked, const std::vector<Instant>& hours, Instant origin) {
  const auto from = CurveOrigin::at(asked.record, origin);
  if (!from || !from->has_all_terms()) return {};
  std::vector<Temperature> curve;
  for (const Instant t : hours) {
    const auto value = t <= origin ? asked.record.at(t) : from->ahead(t - origin, asked.leads);
    if (!value) return {};
    curve.push_back(*value);
  }
  return curve;
}

std::vector<Temperature> observed(const HourlyTemperatures& record, const std::vector<Instant>& hours) {
  std::vector<Temperature> seen;
  for (const Instant t : hours)
    if (const auto value = record.at(t)) seen.push_back(*value);
  return seen.size() == hours.size() ? seen : std::vector<Temperature>{};
}

struct JudgedMaximum {
  Temperature seen, curve, yesterday;
  TemperatureChange since_yesterday;  // at 06 h
};

std::vector<JudgedMaximum> maxima_of(const DaysAsked& asked) {
  std::vector<JudgedMaximum> maxima;
  for (const LocalDay& day : days_of(asked)) {
    const auto hours = hours_of(asked.record, day);
    const Instant origin = asked.record.hour_by(day.at(6));
    const auto seen = observed(asked.record, hours),
               before = observed(asked.record, hours_of(asked.record, day.before()));
    const auto curve = seen_from(asked, hours, origin);
    const auto now = asked.record.at(origin), day_before = asked.record.at(origin - 24 * kHour);
    if (seen.empty() || before.empty() || curve.empty() || !now || !day_before) continue;
    const auto highest = [](const std::vector<Temperature>& t) { return *std::max_element(t.begin(), t.end()); };
    maxima.push_back({highest(seen), highest(curve), highest(before), *now - *day_before});
  }
  return maxima;
}

template <class Error>
TemperatureChange mean_of(const std::vector<JudgedMaximum>& maxima, const Error& error) {
  double sum = 0.0;
  for (const JudgedMaximum& m : maxima) sum += error(m);
  return kelvins(maxima.empty() ? 0.0 : sum / static_cast<double>(maxima.size()));
}

// The instant at which a row of hours first stands at the stop; straight lines between hours.
std::optional<Instant> reaches(const std::vector<Instant>& hours, const std::vector<Temperature>& curve,
                               Temperature stop) {
  for (std::size_t i = 0; i < curve.size(); ++i) {
    if (curve[i] < stop) continue;
    if (i == 0) return hours[0];
    const double share = in_kelvins(stop - curve[i - 1]) / in_kelvins(curve[i] - curve[i - 1]);
    return hours[i - 1] + period(share * duration(kHour));
  }
  return std::nullopt;
}

std::optional<std::vector<Temperature>> high_case(const std::vector<Instant>& hours, std::vector<Temperature> curve,
                                                  Instant origin, const HighBand& high) {
  for (std::size_t i = 0; i < curve.size(); ++i) {
    if (hours[i] <= origin) continue;
    const auto band = high(origin, hours[i] - origin);
    if (!band) return std::nullopt;
    curve[i] = curve[i] + *band;
  }
  return curve;
}

}  // namespace

TemperatureChange maximum_missed(const DaysAsked& asked) {
  return mean_of(maxima_of(asked), [](const JudgedMaximum& m) { return in_kelvins(m.seen - m.curve); });
}

MaximumScore judged_maxima(const DaysAsked& asked, TemperatureChange missed) {
  const auto maxima = maxima_of(asked);
  const auto error = [&](const JudgedMaximum& m) { return in_kelvins(m.curve + missed - m.seen); };
  const auto rule = [](const JudgedMaximum& m) {
    return in_kelvins(m.yesterday + kShareOfMorning * m.since_yesterday - m.seen);
  };
  MaximumScore score;
  score.days = maxima.size();
  score.error = mean_of(maxima, [&](const JudgedMaximum& m) { return std::abs(error(m)); });
  score.bias = mean_of(maxima, error);
  score.rule_error = mean_of(maxima, [&](const JudgedMaximum& m) { return std::abs(rule(m)); });
  score.rule_bias = mean_of(maxima, rule);
  score.yesterday_error =
      mean_of(maxima, [](const JudgedMaximum& m) { return std::abs(in_kelvins(m.yesterday - m.seen)); });
  return score;
}

StopScore judged_stops(const DaysAsked& asked, Temperature stop, int seen_from_hour, bool evening_before,
                       const HighBand& high) {
  StopScore score;
  score.seen_from = seen_from_hour;
  score.evening_before = evening_before;
  for (const LocalDay& day : days_of(asked)) {
    const auto hours = hours_of(asked.record, day);
    const Instant origin = asked.record.hour_by((evening_before ? day.before() : day).at(seen_from_hour));
    const auto seen = observed(asked.record, hours), curve = seen_from(asked, hours, origin);
    if (seen.empty() || curve.empty()) continue;
    const auto high_curve = high_case(hours, curve, origin, high);
    if (!high_curve) continue;
    const auto called = reaches(hours, *high_curve, stop);
    const auto first = std::find_if(seen.begin(), seen.end(), [&](Temperature t) { return t >= stop; });
    if (first == seen.end()) {
      ++score.others;
      if (called) ++score.called_in_vain;
      continue;
    }
    ++score.came;
    const Instant came = hours[static_cast<std::size_t>(first - seen.begin())];
    if (called && (*called - kNamedEarlier <= came)) ++score.named_in_time;
  }
  return score;
}

}  // namespace floatwright
