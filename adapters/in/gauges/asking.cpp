#include "adapters/in/gauges/asking.hpp"

#include <date/date.h>

#include <algorithm>

#include "adapters/in/gauges/plain_text.hpp"

namespace floatwright {

std::vector<AskedPiece> pieces_of(const Wanted& wanted, Period longest) {
  std::vector<AskedPiece> out;
  for (Instant from = wanted.from; from < wanted.to; from += longest)
    out.push_back({from, std::min(wanted.to, from + longest)});
  return out;
}

std::vector<StationGroup> groups_of(const Wanted& wanted, std::size_t most) {
  std::vector<StationGroup> out;
  for (std::size_t first = 0; first < wanted.stations.size(); first += most) {
    const std::size_t end = std::min(first + most, wanted.stations.size());
    StationGroup group{.stations = {}, .tag = end - first == 1 ? first : kManyStations};
    for (std::size_t i = first; i < end; ++i) group.stations.push_back(percent_encoded(wanted.stations[i]));
    out.push_back(std::move(group));
  }
  return out;
}

std::string joined(const std::vector<std::string>& all, const std::string& between) {
  std::string out;
  for (const std::string& one : all) out += (out.empty() ? "" : between) + one;
  return out;
}

HttpRequest json_request(std::string url, std::size_t tag) {
  return {.url = std::move(url), .headers = {"Accept: application/json"}, .content_types = {"json"}, .tag = tag};
}

std::string time_asked(Instant time) { return date::format("%FT%TZ", time); }

std::string date_asked(Instant time) { return date::format("%F", time); }

}  // namespace floatwright
