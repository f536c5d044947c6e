#include "engine/trip/provenance.hpp"

#include <algorithm>

namespace floatwright {
namespace {

bool measures(const GaugeRecord& record, Variable variable) {
  return std::any_of(record.newest.begin(), record.newest.end(),
                     [&](const NewestReading& n) { return n.variable == variable; });
}

template <class T>
void keep_newest(std::optional<Instant>& newest, const Series<T>& series) {
  if (!series.empty() && (!newest || series.times.back() > *newest)) newest = series.times.back();
}

bool has_fresh_reading(const GaugeRecord& record, Instant now) {
  const auto read = newest_usable(record);
  return read && !is_old(*read, now);
}

}  // namespace

bool is_silent(const GaugeRecord& record) {
  return record.newest.empty() && record.discharge.empty() && record.stage.empty() && record.temperature.empty() &&
         record.turbidity.empty();
}

std::optional<Instant> newest_usable(const GaugeRecord& record) {
  std::optional<Instant> newest;
  keep_newest(newest, record.discharge);
  if (newest || measures(record, Variable::Flow) || measures(record, Variable::GaugeHeight)) return newest;
  keep_newest(newest, record.temperature);
  keep_newest(newest, record.turbidity);
  return newest;
}

void add_provenance(const RiverDay& day, DayPlan& plan) {
  plan.nothing = true;
  for (std::size_t g = 0; g < day.river.gauges.size(); ++g) {
    const std::string& id = day.river.gauges[g].id;
    const GaugeRecord record = g < day.records.size() ? day.records[g] : GaugeRecord{};
    for (const NewestReading& newest : record.newest) {
      plan.readings.push_back(newest);
      plan.reading_gauges.push_back(id);
    }
    if (is_silent(record)) plan.missing_gauges.push_back(id);
    if (!is_silent(record)) plan.nothing = false;
    if (!has_fresh_reading(record, day.now)) plan.stale = true;
    plan.notes.insert(plan.notes.end(), record.choices.begin(), record.choices.end());
    plan.notes.insert(plan.notes.end(), record.left_out.begin(), record.left_out.end());
  }
  for (const GaugeOutlook& outlook : plan.outlooks) {
    if (outlook.flow.has_value()) plan.nothing = false;  // an agency's forecast may speak where no gauge does
    if (!outlook.source.empty())
      plan.notes.push_back("At gauge " + outlook.gauge + " the flow ahead is from " + outlook.source + ".");
    for (const std::string& note : outlook.notes)  // of the rain several gauges say the same
      if (std::ranges::find(plan.notes, note) == plan.notes.end()) plan.notes.push_back(note);
  }
  plan.notes.insert(plan.notes.end(), day.flows.doubts.begin(), day.flows.doubts.end());
}

}  // namespace floatwright
