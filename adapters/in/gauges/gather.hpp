#pragma once
// Brings together what is known of the configured gauges: from a directory of payload files, or over HTTP into the
// archive directory (one answer a file, written whole), or from the archive alone. A lost gauge is told, not fatal.
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

// `offline`: never touches the network. Otherwise fetches what is older than 30 minutes.
[[nodiscard]] Gathered gather_readings(const Configuration& configuration, Instant now, bool offline);

}  // namespace floatwright
