#pragma once
// What every gauge service is to the rest: a name, how its bytes are told from others', how they are read, and how it is
// asked. To add a service: a folder with these functions, and its line in payload.cpp.
#include <cstddef>
#include <string>
#include <string_view>
#include <vector>

#include "adapters/result.hpp"
#include "engine/readings/reading.hpp"

namespace floatwright {

struct HttpRequest;

struct ServiceAccess {
  std::string base;     // address without a slash at its end
  std::string api_key;  // may be empty
};

struct Wanted {
  std::vector<std::string> stations;  // without their prefix, all of one service
  Instant from{}, to{};
};

// Tag of a request that is for several stations; else the tag is the index into Wanted::stations.
inline constexpr std::size_t kManyStations = static_cast<std::size_t>(-1);

struct GaugeService {
  std::string name;    // "usgs-water-data", "usgs-legacy": what --service takes
  std::string prefix;  // of a station, "usgs"
  bool (*recognises)(std::string_view bytes) = nullptr;
  Result<GaugeAnswer> (*read)(std::string_view bytes, const std::string& where) = nullptr;  // `where`: file or address
  std::string address = {};                                                                 // ServiceAccess::base
  // As few requests as the service allows; null: its answers are read from files only.
  std::vector<HttpRequest> (*ask)(const Wanted& wanted, const ServiceAccess& access) = nullptr;
  bool names_its_station = true;  // false: an answer does not say of which station it is; who asked knows
  Period longest{0};  // span of one request; 0: no limit of the service's own
  Period keeps{0};    // how far back it goes; 0: no limit that is known
};

}  // namespace floatwright
