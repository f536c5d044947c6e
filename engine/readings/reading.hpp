#pragma once
// What a gauge service said, in one shape for all services: series of readings, each an instant (UTC), a value in SI or
// none, and its marks. A code that means "missing" never gets in as a number.
#include <optional>
#include <set>
#include <string>
#include <vector>

#include "engine/units/instant.hpp"

namespace floatwright {

enum class Variable { Flow, GaugeHeight, WaterTemperature, Clarity };  // SI: m3/s, m, C, FNU

enum class Mark {
  Provisional,
  Approved,
  Revised,
  Estimated,
  Ice,        // value, if any, is kept for display and is never flow
  Equipment,  // likewise
  Backwater,  // likewise
  Discontinued,
  Unavailable,
  Stale,         // set here, not by a service
  SuspectSpike,  // set here, not by a service
  Unknown        // a code not in our list: its text is kept in GaugeSeries::unknown_codes
};
using Marks = std::set<Mark>;

struct Reading {
  Instant time{};
  std::optional<double> si;  // in the variable's SI unit; none: missing, the marks may say why
  Marks marks;
};

// One sensor's row at one station. Keyed by (station, series id); several sensors per variable are normal.
struct GaugeSeries {
  std::string station;    // with its service's prefix, "usgs:00000001"
  std::string series_id;  // as the service names it
  std::string sensor;     // what the service says of the sensor's place or method, may be empty
  std::string station_name;
  std::string source;  // file or address the bytes came from; may be empty
  Variable variable = Variable::Flow;
  bool daily = false;  // times are date labels of the station's local day, written as 00:00Z: no instants, never a
                       // record to plan from
  std::vector<Reading> readings;  // sorted by time, one per instant (the reader does both and says what it dropped)
  std::set<std::string> unknown_codes;
};

// What one payload held. `notes` are sentences about what was dropped or odd, each naming the series.
struct GaugeAnswer {
  std::vector<GaugeSeries> series;
  std::vector<std::string> notes;
  std::vector<std::string> doubts;  // those of the notes that a plan repeats: what could not be read or is not whole
};

}  // namespace floatwright
