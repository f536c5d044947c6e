#pragma once
// What a gauge service said, in one shape for all services: series of readings, each an instant (UTC), a value in SI or
// none, and its marks. A code that means "missing" never gets in as a number.
#include <optional>
#include <set>
#include <string>
#include <vector>

#include "engine/readings/mark.hpp"
#include "engine/units/instant.hpp"

namespace floatwright {

// SI: m3/s, m, C, FNU; of the air: C, mm/h, m/s.
enum class Variable { Flow, GaugeHeight, WaterTemperature, Clarity, AirTemperature, Rain, Wind };

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
  std::optional<Instant> issued = {};  // a forecast, made then: never a record of what was; none: observed
  std::vector<Reading> readings;  // sorted by time, one per instant (the reader does both and says what it dropped)
  std::set<std::string> unknown_codes;
};

// What one payload held. `notes` are sentences about what was dropped or odd, each naming the series.
struct GaugeAnswer {
  std::vector<GaugeSeries> series;
  std::vector<std::string> notes;
  std::optional<std::string> next = {};  // address of the page on which the answer goes on, as the service wrote it
  std::vector<std::string> doubts;  // those of the notes that a plan repeats: what could not be read or is not whole
};

}  // namespace floatwright
