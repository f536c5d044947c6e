#pragma once
// All payload files of one directory as one set of series. A file that does not read is told and the rest goes on.
// Of rows that two files give differently for one instant the file whose series reaches further counts.
#include <filesystem>
#include <string>
#include <vector>

#include "adapters/result.hpp"
#include "engine/readings/reading.hpp"
#include "engine/readings/station_about.hpp"

namespace floatwright {

struct Payloads {
  std::vector<GaugeSeries> series;    // one per (station, series id); `source` is the file that reaches furthest
  std::vector<std::string> troubles;  // sentences, each naming its file
};

// "*.json", "*.xml", "*.rdb" and "*.csv" in order of name, hidden files left alone, as are field measurements and
// answers that tell of stations: they hold no series.
[[nodiscard]] Payloads read_payload_directory(const std::filesystem::path& directory);

// What the answers of the latter kind say, joined. One that does not read is a Failure.
[[nodiscard]] Result<std::vector<StationAbout>> stations_in_payload_directory(const std::filesystem::path& directory);

// One text that came by another way, such as straight from the network.
[[nodiscard]] Payloads read_payload_text(const std::string& bytes, const std::string& where);

[[nodiscard]] Payloads merged(const std::vector<Payloads>& all);

}  // namespace floatwright
