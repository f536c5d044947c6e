#pragma once
// What can be learned of a station before anything is configured: what its service says of it, and its last readings.
#include <filesystem>
#include <string>
#include <vector>

#include "adapters/in/fetch/fetch.hpp"
#include "engine/readings/station_about.hpp"

namespace floatwright {

inline constexpr Period kFirstLook =
    std::chrono::days{3};  // of readings: enough for the newest of a gauge that is alive

struct FirstLook {
  StationAbout about;      // the key alone where the service does not say more, or is not asked
  bool described = false;  // by its service
  std::vector<GaugeSeries> series;
  std::vector<std::string> troubles;  // sentences: what could not be had though it was asked for
};

// From the network. Failure 69 where the service can't be reached or has nothing of the station. A service that is only
// read from files is not asked, and a trouble says so.
[[nodiscard]] Result<FirstLook> first_look(const std::string& station, const ServicesAsked& services,
                                           const FetchOrder& order);

// From recorded answers. Failure 66 where there is no such directory, 65 where what tells of the station does not read,
// 69 where nothing is of it.
[[nodiscard]] Result<FirstLook> first_look_in(const std::filesystem::path& directory, const std::string& station);

}  // namespace floatwright
