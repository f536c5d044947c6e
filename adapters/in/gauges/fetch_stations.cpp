#include "adapters/in/gauges/fetch_stations.hpp"

#include <algorithm>
#include <chrono>
#include <filesystem>
#include <fstream>

#include "adapters/in/gauges/payload.hpp"
#include "adapters/in/gauges/plain_text.hpp"
#include "adapters/in/gauges/usgs_water_data/ask_one_station.hpp"
#include "adapters/in/gauges/usgs_words.hpp"
#include "adapters/out/files/whole_file.hpp"

namespace floatwright {
namespace {

namespace fs = std::filesystem;

std::string number_of(const std::string& station) { return station.substr(station.find(':') + 1); }

fs::path file_of(const fs::path& archive, const std::string& station) {
  return archive / ("usgs-water-data_" + number_of(station) + ".json");
}

// A file from the future (a plan made for an earlier hour) is new enough.
bool is_fresh(const fs::path& file, Instant now) {
  std::error_code missing;
  const auto written = fs::last_write_time(file, missing);
  if (missing) return false;
  const auto at = std::chrono::floor<std::chrono::seconds>(std::chrono::file_clock::to_sys(written));
  return now - at <= kAskAgainAfter;
}

std::string without_controls(std::string text) {
  std::erase_if(text, [](char c) { return static_cast<unsigned char>(c) < 0x20 || c == 0x7F; });
  return text;
}

// A key that others may read is not used.
std::string api_key(const ReadingsPlace& place, std::vector<std::string>& troubles) {
  if (!place.api_key_file) return {};
  const std::string name = place.api_key_file->string();
  std::error_code missing;
  const auto permissions = fs::status(*place.api_key_file, missing).permissions();
  std::ifstream in(*place.api_key_file);
  if (missing || !in) {
    troubles.push_back(name + ": the key can't be read; asked without it");
    return {};
  }
  if ((permissions & (fs::perms::group_all | fs::perms::others_all)) != fs::perms::none) {
    troubles.push_back(name + ": others may read this key, so it was not used; run chmod 600 on it");
    return {};
  }
  std::string line;
  std::getline(in, line);
  return without_controls(std::string{trimmed(line)});
}

UsgsAsking asking_of(const ReadingsPlace& place, const ServiceAddresses& addresses,
                     std::vector<std::string>& troubles) {
  UsgsAsking out;
  out.base = addresses.usgs_water_data;
  out.user_agent = "floatwright (" + without_controls(place.contact) + ")";
  out.api_key = api_key(place, troubles);
  return out;
}

Payloads fetch_one(const UsgsAsking& asking, const std::string& station, const std::optional<fs::path>& archive) {
  const std::string location = monitoring_location(number_of(station));
  const auto bytes = ask_usgs_water_data(asking, location);
  if (!bytes) return {.series = {}, .troubles = {"station " + station + ": " + bytes.error().what}};
  if (!archive) return read_payload_text(*bytes, asking.base);
  const auto written = write_whole_file(file_of(*archive, station), *bytes);
  if (written) return {};
  Payloads out = read_payload_text(*bytes, asking.base);
  out.troubles.push_back(written.error().what);
  return out;
}

}  // namespace

bool is_known_station(const std::string& station) {
  const auto& services = gauge_services();
  const auto colon = station.find(':');
  if (colon == std::string::npos || colon + 1 == station.size()) return false;
  const bool known = std::any_of(services.begin(), services.end(),
                                 [&](const GaugeService& s) { return s.prefix == station.substr(0, colon); });
  return known && std::all_of(station.begin() + static_cast<std::ptrdiff_t>(colon) + 1, station.end(), [](char c) {
           return (c >= '0' && c <= '9') || (c >= 'A' && c <= 'Z') || (c >= 'a' && c <= 'z') || c == '-';
         });
}

Payloads fetch_stations(const std::set<std::string>& stations, const ReadingsPlace& place, Instant now,
                        const ServiceAddresses& addresses) {
  Payloads first;
  std::error_code ignored;  // write_whole_file tells what is wrong with the folder
  if (place.archive) fs::create_directories(*place.archive, ignored);
  const UsgsAsking asking = asking_of(place, addresses, first.troubles);
  std::vector<Payloads> all{first};
  for (const std::string& station : stations)
    if (!place.archive || !is_fresh(file_of(*place.archive, station), now))
      all.push_back(fetch_one(asking, station, place.archive));
  return merged(all);
}

}  // namespace floatwright
