#pragma once
// USGS RDB, tab-separated text: values of instants (local time and a zone code on each row) and of days. A column of
// values is named by its time series, its parameter and its statistic, "107389_00060_00003", with its codes in a column
// of the same name and "_cd"; a code may stand in place of a value. Files of the same form that hold no readings, such
// as ratings, measurements, peaks and lists of stations, are told as what they are.
#include <string>
#include <string_view>

#include "adapters/result.hpp"
#include "engine/readings/reading.hpp"

namespace floatwright {

[[nodiscard]] bool is_usgs_rdb(std::string_view bytes);
[[nodiscard]] Result<GaugeAnswer> read_usgs_rdb(std::string_view bytes, const std::string& where);

}  // namespace floatwright
