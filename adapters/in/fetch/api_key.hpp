#pragma once
// The key of one's own that a service asks for: from the environment, or from a file that nobody else may read. It is
// never printed.
#include <string>
#include <vector>

#include "adapters/in/files/configuration.hpp"
#include "adapters/in/gauges/service.hpp"

namespace floatwright {

// "FLOATWRIGHT_KEY_USGS_WATER_DATA" of "usgs-water-data".
[[nodiscard]] std::string key_variable(const std::string& service_name);

// The variable first, then the file that settings.json names; empty: none. What is wrong with the file is told.
[[nodiscard]] std::string api_key(const GaugeService& service, const ReadingsPlace& place,
                                  std::vector<std::string>& troubles);

}  // namespace floatwright
