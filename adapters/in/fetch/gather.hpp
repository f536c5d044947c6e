#pragma once
// Brings together what is known of the configured gauges: from a directory of payload files, or from the archive after
// what is old in it has been fetched. A lost gauge is told, not fatal; without an archive the fresh readings still count.
#include <filesystem>
#include <optional>
#include <string>
#include <vector>

#include "adapters/in/fetch/fetch.hpp"
#include "adapters/in/files/configuration.hpp"
#include "adapters/in/gauges/payload_directory.hpp"
#include "engine/readings/gauge_record.hpp"
#include "engine/readings/weather.hpp"

namespace floatwright {

inline constexpr Period kAskAgainAfter = std::chrono::minutes{30};

struct GatherOrder {
  FetchOrder fetch;
  bool offline = false;                           // never touches the network
  std::optional<std::filesystem::path> archive;   // the file; none: no place for one could be found
};

struct Gathered {
  std::vector<GaugeRecord> records;   // by River::gauges index; empty where nothing was found
  std::optional<Weather> weather;     // of River::weather_at
  std::vector<std::string> troubles;  // sentences for standard error and the page: what failed, and what to do
};

[[nodiscard]] Gathered gather_readings(const Configuration& configuration, const GatherOrder& order);

// The series of these stations from `from` on, from wherever the settings have them.
[[nodiscard]] Payloads gather_series(const Configuration& configuration, const std::vector<std::string>& stations,
                                     Instant from, const GatherOrder& order);

}  // namespace floatwright
