#include "adapters/in/gauges/asking.hpp"

#include <date/date.h>

#include <algorithm>

#include "adapters/in/text/plain_text.hpp"

namespace floatwright {

std::vector<AskedPiece> pieces_of(const Wanted& wanted, Period longest) {
  std::vector<AskedPiece> out;
  for (Instant from = wanted.from; from < wanted.to; from += longest)
    out.push_back({from, std::min(wanted.to, from + longest)});
  return out;
}

std::vector<StationGroup> groups_of(const Wanted& wanted, std::size_t most) {
  std::vector<StationGroup> out;
  for (std::size_t i = 0; i < wanted.stations.size(); ++i)
    out.push_back({.stations = {percent_encoded(wanted.stations[i])}, .tag = i});
  if (out.size() < 2 || out.size() > most) return out;
  StationGroup all;
  for (StationGroup& one : out) all.stations.push_back(std::move(one.stations.front()));
  return {std::move(all)};
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
