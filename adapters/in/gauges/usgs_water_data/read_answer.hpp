#pragma once
// USGS Water Data, OGC API Features, versions 0 and 1: the GeoJSON of the collections continuous, latest-continuous,
// daily and latest-daily. Features come unsorted, several series interleaved; values are strings, null is missing; the
// identity of a row is its time series and its time.
#include <optional>
#include <string>
#include <string_view>

#include "adapters/result.hpp"
#include "engine/readings/reading.hpp"

namespace floatwright {

struct UsgsPage {
  GaugeAnswer answer;
  std::size_t features = 0;
  std::optional<std::string> next;  // address of the next page, as sent
};

[[nodiscard]] bool is_usgs_water_data(std::string_view bytes);
[[nodiscard]] Result<UsgsPage> read_usgs_water_data_page(std::string_view bytes, const std::string& where);
// A page that is not the last gives a note: its rows are not the whole answer.
[[nodiscard]] Result<GaugeAnswer> read_usgs_water_data(std::string_view bytes, const std::string& where);

}  // namespace floatwright
