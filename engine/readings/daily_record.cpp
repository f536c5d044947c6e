#include "engine/readings/daily_record.hpp"

#include <algorithm>
#include <string>

#include "engine/readings/usable.hpp"

namespace floatwright {
namespace {

constexpr Period kDay = std::chrono::hours{24};

bool known(const Reading& row, Variable variable, Instant now) {
  return row.time + kDay <= now && !why_not_usable(row, variable, now);
}

Instant newest_known(const GaugeSeries& series, Instant now) {
  Instant newest = Instant::min();
  for (const Reading& row : series.readings)
    if (known(row, series.variable, now)) newest = std::max(newest, row.time);
  return newest;
}

const GaugeSeries* daily_series(const std::vector<GaugeSeries>& own, Variable variable, Instant now) {
  const GaugeSeries* best = nullptr;
  for (const GaugeSeries& series : own) {
    if (!series.daily || series.issued || series.variable != variable || newest_known(series, now) == Instant::min())
      continue;
    const Instant newest = newest_known(series, now);
    const bool better = best == nullptr || newest > newest_known(*best, now) ||
                        (newest == newest_known(*best, now) && series.series_id < best->series_id);
    if (better) best = &series;
  }
  return best;
}

template <class T>
void take(GaugeRecord& record, Series<T>& out, const GaugeSeries& series, T (*from_si)(double), Instant now) {
  std::size_t left_out = 0;
  for (const Reading& row : series.readings) {
    if (!known(row, series.variable, now)) {
      if (row.time + kDay <= now) ++left_out;
      continue;
    }
    out.times.push_back(row.time);
    out.values.push_back(from_si(*row.si));
  }
  if (left_out > 0)
    record.left_out.push_back("Not used as daily " + name_of(series.variable) + " at " + record.gauge + ": " +
                              std::to_string(left_out) + (left_out == 1 ? " day." : " days."));
}

// A mean stands for the whole of its day: it is as old as the day's end.
void show_newest(GaugeRecord& record, const GaugeSeries& series, Instant now) {
  const bool shown = std::any_of(record.newest.begin(), record.newest.end(),
                                 [&](const NewestReading& r) { return r.variable == series.variable; });
  if (shown) return;
  const auto row = std::find_if(series.readings.rbegin(), series.readings.rend(),
                                [&](const Reading& r) { return known(r, series.variable, now); });
  NewestReading newest{.variable = series.variable,
                       .si = *row->si,
                       .time = row->time + kDay,
                       .marks = row->marks,
                       .series_id = series.series_id,
                       .source = series.source};
  if (now - newest.time > kStaleAfter) newest.marks.insert(Mark::Stale);
  record.newest.push_back(std::move(newest));
}

}  // namespace

void take_daily(GaugeRecord& record, const std::vector<GaugeSeries>& own, Instant now) {
  if (const auto* series = daily_series(own, Variable::Flow, now)) {
    take(record, record.daily_discharge, *series, cubic_metres_per_second, now);
    show_newest(record, *series, now);
  }
  if (const auto* series = daily_series(own, Variable::WaterTemperature, now)) {
    take(record, record.daily_temperature, *series, celsius, now);
    show_newest(record, *series, now);
  }
}

}  // namespace floatwright
