#pragma once
// Which stations a river needs, and which service is asked for each.
#include <optional>
#include <string>
#include <vector>

#include "adapters/in/files/configuration.hpp"
#include "adapters/in/gauges/service.hpp"

namespace floatwright {

// Gauges, their official forecasts and the place of the weather, each once, sorted.
[[nodiscard]] std::vector<std::string> stations_of(const River& river);

// "nws:45.0000,-111.0000"; none: the river names no place for its weather.
[[nodiscard]] std::optional<std::string> weather_station(const River& river);

// "usgs" of "usgs:01541000", and what follows the colon.
[[nodiscard]] std::string prefix_of(const std::string& station);
[[nodiscard]] std::string number_of(const std::string& station);

// A service as it is asked here.
struct ServiceAsked {
  const GaugeService* service = nullptr;
  ServiceAccess access;
};

// The first service of the station's prefix that settings.json lists, else the first that can be asked; none: its
// answers come from files, or the prefix is no service's. What is wrong with a key is told once in `troubles`.
class ServicesAsked {
 public:
  ServicesAsked(const ReadingsPlace& place, std::vector<std::string>& troubles);
  [[nodiscard]] const ServiceAsked* of(const std::string& station) const;

 private:
  std::vector<ServiceAsked> services_;  // one a prefix
};

}  // namespace floatwright
