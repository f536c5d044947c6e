#pragma once
// Asks the services for the configured stations and puts each answer whole into the archive. A station that can't be
// had is told; the archive keeps what it had of it.
#include <set>
#include <string>
#include <vector>

#include "adapters/in/files/configuration.hpp"
#include "adapters/in/gauges/gather.hpp"
#include "adapters/in/gauges/payload_directory.hpp"

namespace floatwright {

// `stations`: with prefix, each of a known service. Series come back only where there is no archive to read them from.
[[nodiscard]] Payloads fetch_stations(const std::set<std::string>& stations, const ReadingsPlace& place, Instant now,
                                      const ServiceAddresses& addresses);

// "usgs:01541000": of a service that is read here, and a number that may stand in an address and a file's name.
[[nodiscard]] bool is_known_station(const std::string& station);

}  // namespace floatwright
