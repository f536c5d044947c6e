#include "engine/readings/gauge_record.hpp"

#include <algorithm>
#include <map>

#include "engine/readings/choose_series.hpp"
#include "engine/readings/daily_record.hpp"
#include "engine/readings/spikes.hpp"
#include "engine/readings/usable.hpp"

namespace floatwright {
namespace {

struct Split {
  std::vector<Reading> usable;
  std::map<std::string, std::size_t> left_out;  // by reason
};

Split split(const GaugeSeries& series, Instant now) {
  Split out;
  for (const Reading& row : series.readings) {
    if (const auto why = why_not_usable(row, series.variable, now))
      ++out.left_out[*why];
    else
      out.usable.push_back(row);
  }
  return out;
}

std::string rows(std::size_t n) { return std::to_string(n) + (n == 1 ? " row " : " rows "); }

std::string left_out_sentence(const Split& parts, const std::string& what) {
  std::string list;
  for (const auto& [why, count] : parts.left_out) list += (list.empty() ? "" : ", ") + rows(count) + why;
  return "Not used as " + what + ": " + list + ".";
}

// The newest row not after `now`; the series has one.
const Reading& newest_row(const GaugeSeries& series, Instant now) {
  const Reading* newest = nullptr;
  for (const Reading& row : series.readings)
    if (row.time <= now && (newest == nullptr || row.time > newest->time)) newest = &row;
  return *newest;
}

Measured<double> shown_value(const Reading& row, Variable variable, Instant now) {
  const auto why = why_not_usable(row, variable, now);
  if (!row.si) return Absent{"the newest row is " + why.value_or("without a value")};
  const bool kept_for_display = row.marks.contains(Mark::Ice) || row.marks.contains(Mark::Equipment) ||
                                row.marks.contains(Mark::Backwater) || row.marks.contains(Mark::Discontinued) ||
                                row.marks.contains(Mark::Unavailable);
  if (why && !kept_for_display) return Absent{"the newest row is " + *why};
  return *row.si;
}

NewestReading newest_reading(const GaugeSeries& series, const std::vector<Instant>& suspect, const std::string& source,
                             Instant now) {
  const Reading& row = newest_row(series, now);
  NewestReading out{.variable = series.variable,
                    .si = shown_value(row, series.variable, now),
                    .time = row.time,
                    .marks = row.marks,
                    .series_id = series.series_id,
                    .source = series.source.empty() ? source : series.source};
  if (now - row.time > kStaleAfter) out.marks.insert(Mark::Stale);
  if (std::find(suspect.begin(), suspect.end(), row.time) != suspect.end()) out.marks.insert(Mark::SuspectSpike);
  return out;
}

std::vector<Instant> suspect_times(const std::vector<Reading>& usable, Variable variable) {
  std::vector<Instant> out;
  for (const std::size_t i : spikes(usable, variable)) out.push_back(usable[i].time);
  return out;
}

template <class T>
Series<T> series_of(const std::vector<Reading>& usable, T (*from_si)(double)) {
  Series<T> out;
  for (const Reading& row : usable) {
    out.times.push_back(row.time);
    out.values.push_back(from_si(*row.si));
  }
  return out;
}

void keep(GaugeRecord& record, Variable variable, const std::vector<Reading>& usable) {
  switch (variable) {
    case Variable::Flow:
      record.discharge = series_of<Discharge>(usable, cubic_metres_per_second);
      break;
    case Variable::GaugeHeight:
      record.stage = series_of<Stage>(usable, stage_metres);
      break;
    case Variable::WaterTemperature:
      record.temperature = series_of<Temperature>(usable, celsius);
      break;
    case Variable::Clarity:
      record.turbidity = series_of<Turbidity>(usable, fnu);
      break;
    case Variable::AirTemperature:
    case Variable::Rain:
    case Variable::Wind:
      break;  // no gauge's water
  }
}

void tell_daily(GaugeRecord& record, const std::vector<GaugeSeries>& all, Variable variable) {
  const auto count =
      std::count_if(all.begin(), all.end(), [&](const GaugeSeries& s) { return s.daily && s.variable == variable; });
  if (count == 0) return;
  record.left_out.push_back("Not used as " + name_of(variable) + " at " + record.gauge + ": " + std::to_string(count) +
                            " series of daily values, which have dates and no hours.");
}

void take_variable(GaugeRecord& record, const std::vector<GaugeSeries>& all, Variable variable,
                   const std::string& source, Instant now) {
  const auto choice = choose_series(all, variable, record.gauge, now);
  if (!choice) return;
  tell_daily(record, all, variable);
  if (!choice->why.empty()) record.choices.push_back(choice->why);

  const std::string what = name_of(variable) + " at " + record.gauge;
  const Split parts = split(*choice->series, now);
  if (!parts.left_out.empty()) record.left_out.push_back(left_out_sentence(parts, what));
  const std::vector<Instant> suspect = suspect_times(parts.usable, variable);
  if (!suspect.empty())
    record.left_out.push_back("Kept, but out of line with the readings around: " + rows(suspect.size()) + "of " + what +
                              ".");
  keep(record, variable, parts.usable);
  record.newest.push_back(newest_reading(*choice->series, suspect, source, now));
  if (variable == Variable::Flow) record.ice_now = record.newest.back().marks.contains(Mark::Ice);
}

}  // namespace

GaugeRecord gauge_record(const std::string& gauge, const std::string& station, const std::vector<GaugeSeries>& all,
                         const std::string& source, Instant now) {
  GaugeRecord record;
  record.gauge = gauge;
  record.station = station;
  std::vector<GaugeSeries> own;
  for (const GaugeSeries& series : all)
    if (series.station == station) own.push_back(series);
  for (const Variable variable : {Variable::Flow, Variable::GaugeHeight, Variable::WaterTemperature, Variable::Clarity})
    take_variable(record, own, variable, source, now);
  take_daily(record, own, now);
  return record;
}

}  // namespace floatwright
