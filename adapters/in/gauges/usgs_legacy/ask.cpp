#include "adapters/in/gauges/usgs_legacy/ask.hpp"

#include <date/date.h>
#include <fmt/format.h>

#include <algorithm>

#include "adapters/in/text/plain_text.hpp"
#include "adapters/in/gauges/usgs_words.hpp"

namespace floatwright {
namespace {

constexpr std::size_t kMostStations = 100;  // of one request, from memory

// "01541000", and "MN040:05427718" of another agency.
std::string site(const std::string& station) {
  const auto hyphen = station.find('-');
  if (hyphen == std::string::npos) return percent_encoded(station);
  return percent_encoded(station.substr(0, hyphen)) + ":" + percent_encoded(station.substr(hyphen + 1));
}

}  // namespace

std::vector<HttpRequest> ask_usgs_legacy(const Wanted& wanted, const ServiceAccess& access) {
  std::string parameters;
  for (const char* parameter : kUsgsParameters) parameters += (parameters.empty() ? "" : ",") + std::string{parameter};
  std::vector<HttpRequest> out;
  for (std::size_t first = 0; first < wanted.stations.size(); first += kMostStations) {
    const std::size_t end = std::min(first + kMostStations, wanted.stations.size());
    std::string sites;
    for (std::size_t i = first; i < end; ++i) sites += (i == first ? "" : ",") + site(wanted.stations[i]);
    out.push_back({.url = fmt::format("{}/iv/?format=json&sites={}&parameterCd={}&startDT={}&endDT={}&siteStatus=all",
                                      access.base, sites, parameters, date::format("%FT%TZ", wanted.from),
                                      date::format("%FT%TZ", wanted.to)),
                   .headers = {"Accept: application/json"},
                   .content_types = {"json"},
                   .tag = end - first == 1 ? first : kManyStations});
  }
  return out;
}

}  // namespace floatwright
