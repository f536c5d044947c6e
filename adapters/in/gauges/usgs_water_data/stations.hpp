#pragma once
// What USGS Water Data says of stations and of their series: the collections monitoring-locations, time-series-metadata
// and combined-metadata, versions 0 and 1. Version 0 writes begin and end without a zone and again as begin_utc and
// end_utc; version 1 writes them once, in UTC. Areas are square miles and altitudes feet (the latter from memory; the
// recorded ones agree with maps).
#include <map>
#include <optional>
#include <string>
#include <string_view>
#include <vector>

#include "adapters/result.hpp"
#include "engine/readings/station_about.hpp"

namespace floatwright {

class UsgsStations {
 public:
  // A page of any of the collections, in any order. Gives the address of the page on which it goes on, if any.
  [[nodiscard]] Result<std::optional<std::string>> take(std::string_view bytes, const std::string& where);
  // In the order of their keys, each with its series in the order in which they came.
  [[nodiscard]] std::vector<StationAbout> stations() const;

 private:
  std::map<std::string, StationAbout> stations_;
};

// By the keys that only these collections have.
[[nodiscard]] bool is_usgs_stations(std::string_view bytes);

}  // namespace floatwright
