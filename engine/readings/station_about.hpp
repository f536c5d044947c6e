#pragma once
// What a service says of a gauging station and of the series of readings that it keeps there. What it does not say is
// none or empty.
#include <optional>
#include <string>
#include <vector>

#include "engine/readings/reading.hpp"
#include "engine/units/instant.hpp"
#include "engine/units/quantity.hpp"

namespace floatwright {

struct SeriesAbout {
  std::string series_id;
  std::optional<Variable> variable;  // none: not one that is read here
  std::string parameter;             // what is measured, in the service's own code
  std::string statistic;             // likewise; empty: values as they were read
  std::string sensor;                // its place or method
  std::string unit;                  // as the service writes it
  bool primary = false;              // others are kept for a short time only
  bool daily = false;
  std::optional<Instant> begin, end;  // of the readings
  std::optional<Period> longest_gap;  // between two readings that still belong together
};

struct StationAbout {
  std::string station;  // with its service's prefix
  std::string name, site_type, state;
  std::optional<double> latitude_deg, longitude_deg;
  std::string zone;  // abbreviation of its standard time, "MST"
  std::optional<bool> daylight_saving;
  std::optional<Area> drainage_area;
  std::optional<Length> altitude;
  std::vector<SeriesAbout> series;
};

}  // namespace floatwright
