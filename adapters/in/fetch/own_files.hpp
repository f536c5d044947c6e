#pragma once
// Gauges that are files of the user's own: read anew each time, never asked of a service and never put in the archive.
#include <string>
#include <vector>

#include "adapters/in/files/csv_gauge.hpp"
#include "adapters/in/gauges/payload_directory.hpp"

namespace floatwright {

// Of the gauges declared, those among `stations`.
[[nodiscard]] Payloads read_own_files(const std::vector<CsvGauge>& declared, const std::vector<std::string>& stations);

}  // namespace floatwright
