#pragma once
// Brings together what is known of the configured gauges: from a directory of payload files, or over HTTP into the
// archive directory (the newest answer of each station, written whole), or from the archive alone. A lost gauge is
// told, not fatal.
#include <filesystem>
#include <string>
#include <vector>

#include "adapters/in/files/configuration.hpp"
#include "engine/readings/gauge_record.hpp"

namespace floatwright {

struct Gathered {
  std::vector<GaugeRecord> records;   // by River::gauges index; empty where nothing was found
  std::vector<std::string> troubles;  // sentences for standard error and the page: what failed, and what to do
};

// Where the services are; tests point them at the loopback.
struct ServiceAddresses {
  std::string usgs_water_data = "https://api.waterdata.usgs.gov/ogcapi/v1";
};

inline constexpr Period kAskAgainAfter = std::chrono::minutes{30};  // age of the station's file in the archive

// `offline`: never touches the network. Otherwise asks for every station whose file in the archive is older than
// kAskAgainAfter; without an archive for all of them.
[[nodiscard]] Gathered gather_readings(const Configuration& configuration, Instant now, bool offline,
                                       const ServiceAddresses& addresses = {});

}  // namespace floatwright
