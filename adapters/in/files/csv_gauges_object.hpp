#pragma once
// Reads "csv_gauges" of settings.json. Files come out as typed; a zone that is not typed stays empty.
#include <vector>

#include "adapters/in/files/csv_gauge.hpp"
#include "adapters/in/files/typed_object.hpp"

namespace floatwright {

[[nodiscard]] std::vector<CsvGauge> read_csv_gauges(TypedObject& settings);

}  // namespace floatwright
