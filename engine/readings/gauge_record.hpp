#pragma once
// The cleaned record of one gauge: the one series used for each variable, why that one, and what was left out of it.
// Usable rows only are typed series; ice, equipment and backwater rows are kept beside them for display.
// Spikes are marked by a Hampel test (engine/readings/spikes.hpp), never deleted: they stay in the series, a sentence
// says so, and the newest reading carries the mark.
#include <string>
#include <vector>

#include "engine/readings/reading.hpp"
#include "engine/units/measured.hpp"
#include "engine/units/unit.hpp"

namespace floatwright {

template <class T>
struct Series {
  std::vector<Instant> times;  // ascending
  std::vector<T> values;       // same length

  [[nodiscard]] bool empty() const { return times.empty(); }
  [[nodiscard]] std::size_t size() const { return times.size(); }
};

// The newest row of the chosen series, whatever its marks: what the page's provenance line shows.
struct NewestReading {
  Variable variable = Variable::Flow;
  Measured<double> si;  // SI unit of the variable; Absent also for a value that can't be (a negative flow)
  Instant time{};
  Marks marks;
  std::string series_id;
  std::string source;  // where the bytes came from, as the adapter names it
};

// What an agency said, at one moment, the flow here would be.
struct OfficialForecast {
  std::string station;
  Instant issued{};
  Series<Discharge> flow;
};

struct GaugeRecord {
  std::string gauge;    // the id in river.json
  std::string station;  // "usgs:00000001"
  Series<Discharge>
      discharge;  // usable rows: not negative, no ice, equipment, backwater, discontinued; not after `now`
  Series<Stage> stage;
  Series<Temperature> temperature;
  Series<Turbidity> turbidity;
  std::vector<NewestReading> newest;  // one per variable that the gauge reports
  bool ice_now = false;               // newest discharge row is marked ice
  std::vector<std::string> choices;   // sentences: which sensor of several was taken, and why
  std::vector<std::string> left_out;  // sentences: how many rows were left out, and why
  // Means of the station's local days, each at its date's 00:00Z: dates, no instants. Empty where none are known.
  Series<Discharge> daily_discharge = {};
  Series<Temperature> daily_temperature = {};
  std::optional<OfficialForecast> official = {};  // the newest one issued by `now`
};

inline constexpr Period kStaleAfter = std::chrono::hours{6};  // readings older than this end a run with exit code 75

// Cleans what the services said of one station. Of several series of one variable those whose newest usable row is
// within a day of the newest of all are asked; of them the one with more usable rows in the last 72 h is taken, then
// the smaller series id. Daily series go into the daily_ members alone. `source` stands in where a series does not name its own.
[[nodiscard]] GaugeRecord gauge_record(const std::string& gauge, const std::string& station,
                                       const std::vector<GaugeSeries>& all, const std::string& source, Instant now);

// Linear in time between usable rows no further apart than `widest_gap`; Absent across wider gaps and outside.
template <class T>
[[nodiscard]] Measured<T> value_at(const Series<T>& series, Instant t, Period widest_gap = std::chrono::hours{3});

}  // namespace floatwright
