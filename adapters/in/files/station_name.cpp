#include "adapters/in/files/station_name.hpp"

#include <algorithm>

#include "adapters/in/files/nearest.hpp"

namespace floatwright {
namespace {

bool is_number(const std::string& number) {
  const auto fits = [](char c) {
    return (c >= '0' && c <= '9') || (c >= 'A' && c <= 'Z') || (c >= 'a' && c <= 'z') || c == '-' || c == '_' ||
           c == '.' || c == ',' || c == '/';
  };
  return !number.empty() && std::all_of(number.begin(), number.end(), fits);
}

}  // namespace

const std::vector<std::string>& station_prefixes() {
  static const std::vector<std::string> kPrefixes{"usgs", "wsc", "ea", "nwps", "nws", "hubeau", "nve", "foen", "csv"};
  return kPrefixes;
}

const std::vector<std::string>& service_names() {
  static const std::vector<std::string> kNames{"usgs-water-data", "usgs-legacy", "wsc-realtime", "wsc-geomet",
                                               "ea-flood", "ea-hydrology", "nwps", "nws-weather", "hubeau", "nve", "foen"};
  return kNames;
}

std::optional<WrongStation> wrong_station(const std::string& station) {
  const std::size_t colon = station.find(':');
  if (colon == std::string::npos)
    return WrongStation{"a service and a station's number as \"usgs:00000001\"",
                        "Put the service and a colon before it."};
  const std::string prefix = station.substr(0, colon);
  const auto& known = station_prefixes();
  if (std::find(known.begin(), known.end(), prefix) == known.end())
    return WrongStation{"a service out of " + either_of(known) + " before the colon",
                        "The nearest known service is \"" + nearest_word(prefix, known) + "\"."};
  if (!is_number(station.substr(colon + 1)))
    return WrongStation{"letters, digits, - . _ , / after the colon",
                        "Write the station's number as its service gives it."};
  return std::nullopt;
}

void tell_bad_station(TypedObject& in, std::string_view key, const std::string& station) {
  if (auto wrong = wrong_station(station))
    in.tell(key, "\"" + station + "\"", std::move(wrong->allowed), std::move(wrong->mend));
}

}  // namespace floatwright
