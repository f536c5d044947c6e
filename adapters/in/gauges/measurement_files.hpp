#pragma once
// The field measurements that lie in a directory, of whatever form: USGS RDB, pages of the USGS collections, CSV with a
// row a vertical (verticals_csv.hpp), or CSV with a row a visit. The latter's columns are named in its first row, each
// quantity's with its unit: date; station or site (may be left out where the file is of one gauge); discharge, width or
// top_width, mean_depth, and mean_speed or velocity, in _m3_s, _m3s or _cfs, _m or _ft, _m_s or _ft_s.
#include <filesystem>
#include <string>
#include <string_view>
#include <vector>

#include "adapters/result.hpp"
#include "engine/readings/field_measurement.hpp"

namespace floatwright {

struct Measurements {
  std::vector<FieldMeasurement> visits;  // in the order of the files; `station` without a prefix where the file has none
  std::vector<std::string> troubles;     // sentences, each naming its file
};

[[nodiscard]] bool is_field_measurements(std::string_view bytes);

[[nodiscard]] Measurements read_measurement_directory(const std::filesystem::path& directory);

// One CSV file. Failure 65: no column that is needed, or an unknown unit.
[[nodiscard]] Result<Measurements> read_measurements_csv(std::string_view bytes, const std::string& where);

}  // namespace floatwright
