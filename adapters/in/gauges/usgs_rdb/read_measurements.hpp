#pragma once
// Field measurements of USGS as RDB: discharge and stage of each visit, and with the expanded form (32 columns) width,
// area and speed of each channel, one row a channel. Times without a zone code, and dates, are days.
#include <string>
#include <string_view>
#include <vector>

#include "adapters/result.hpp"
#include "engine/readings/field_measurement.hpp"

namespace floatwright {

struct RdbMeasurements {
  std::vector<FieldMeasurement> visits;  // in the order of the file
  std::vector<std::string> notes;        // sentences about what was left out, each with its line
};

[[nodiscard]] Result<RdbMeasurements> read_usgs_rdb_measurements(std::string_view bytes, const std::string& where);

}  // namespace floatwright
