#pragma once
// A gauge's own file, read by what its owner declared of it (adapters/in/files/csv_gauge.hpp). One series a column.
// Lines whose first field begins with # are passed over.
#include <string>
#include <string_view>

#include "adapters/in/files/csv_gauge.hpp"
#include "adapters/result.hpp"

namespace floatwright {

[[nodiscard]] Result<GaugeAnswer> read_csv_gauge(std::string_view bytes, const std::string& where,
                                                 const CsvGauge& gauge);

}  // namespace floatwright
