#pragma once
// The rows of a CSV answer of the Water Survey of Canada, the header apart.
#include <functional>
#include <string>
#include <string_view>
#include <vector>

#include "adapters/in/gauges/series_shelf.hpp"
#include "adapters/result.hpp"

namespace floatwright {

using CsvFields = std::vector<std::string>;

// Reads the rows of a CSV answer: the header with `header`, each row of as many fields with `shelve`; a row of another
// length or with broken quotes is left out and told. `place`: "line 12".
[[nodiscard]] Result<GaugeAnswer> read_wsc_rows(
    std::string_view bytes, const std::string& where, const std::function<Result<void>(const CsvFields&)>& header,
    const std::function<void(SeriesShelf&, const CsvFields&, const std::string& place)>& shelve);

}  // namespace floatwright
