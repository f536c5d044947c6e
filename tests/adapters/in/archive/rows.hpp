#pragma once
// Readings of an invented station for the tests of the archive.
#include <gmock/gmock.h>

#include <string>
#include <vector>

#include "engine/readings/reading.hpp"

namespace floatwright::testing {

inline const std::string kStation = "usgs:00000001";

// Minutes after 2027-05-13T00:00:00Z (date -u -d 2027-05-13 +%s).
[[nodiscard]] inline Instant at(int minutes) { return Instant{Period{1810166400}} + std::chrono::minutes{minutes}; }

[[nodiscard]] inline GaugeSeries flow_of(std::vector<Reading> rows) {
  GaugeSeries out;
  out.station = kStation;
  out.series_id = "flow";
  out.variable = Variable::Flow;
  out.readings = std::move(rows);
  return out;
}

[[nodiscard]] inline GaugeSeries forecast(Instant issued, double si) {
  GaugeSeries out = flow_of({{issued + std::chrono::hours{6}, si, {}}});
  out.issued = issued;
  return out;
}

MATCHER_P(SameRow, wanted, "") {
  *result_listener << "which is " << arg.time.time_since_epoch().count() << " " << arg.si.value_or(-999) << " "
                   << arg.marks.bits();
  return arg.time == wanted.time && arg.si == wanted.si && arg.marks == wanted.marks;
}

MATCHER_P(SameSeries, wanted, "") {
  return arg.station == wanted.station && arg.series_id == wanted.series_id && arg.sensor == wanted.sensor &&
         arg.station_name == wanted.station_name && arg.source == wanted.source && arg.variable == wanted.variable &&
         arg.daily == wanted.daily && arg.issued == wanted.issued && arg.unknown_codes == wanted.unknown_codes &&
         std::ranges::equal(arg.readings, wanted.readings, [](const Reading& a, const Reading& b) {
           return a.time == b.time && a.si == b.si && a.marks == b.marks;
         });
}

}  // namespace floatwright::testing
