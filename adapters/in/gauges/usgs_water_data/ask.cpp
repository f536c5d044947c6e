#include "adapters/in/gauges/usgs_water_data/ask.hpp"

#include <date/date.h>
#include <fmt/format.h>

#include <algorithm>
#include <chrono>

#include "adapters/in/text/plain_text.hpp"
#include "adapters/in/gauges/usgs_words.hpp"

namespace floatwright {
namespace {

constexpr Period kLongestSpan = std::chrono::days{3 * 365};
constexpr std::size_t kLongestAddress = 4000;  // over 8 kB fails

struct Question {
  std::string collection;
  std::string location_property = "monitoring_location_id";
  std::vector<std::string> parameters = {};
  std::string rest = {};  // of the query, beginning with &
};

std::vector<std::string> locations_of(const std::vector<std::string>& stations) {
  std::vector<std::string> out;
  for (const std::string& station : stations) out.push_back(monitoring_location(station));
  return out;
}

// Encoded, since they are put into an address or a JSON text; sound names have nothing to encode.
std::string list(const std::vector<std::string>& names, const char* quote = "") {
  std::string out;
  for (const std::string& name : names) out += (out.empty() ? "" : ",") + (quote + percent_encoded(name) + quote);
  return out;
}

// CQL2, in JSON.
std::string filter(const Question& question, const std::vector<std::string>& locations) {
  const auto in = [](const std::string& property, const std::vector<std::string>& values) {
    return fmt::format(R"({{"op":"in","args":[{{"property":"{}"}},[{}]]}})", property, list(values, "\""));
  };
  const std::string parameters = question.parameters.empty() ? "" : "," + in("parameter_code", question.parameters);
  return fmt::format(R"({{"op":"and","args":[{}{}]}})", in(question.location_property, locations), parameters);
}

HttpRequest request(const Question& question, const std::vector<std::string>& stations, const ServiceAccess& access) {
  const std::vector<std::string> locations = locations_of(stations);
  const std::string items = fmt::format("{}/collections/{}/items?", access.base, question.collection);
  const std::string query = "limit=50000&f=json" + question.rest;
  HttpRequest out{.url = items + question.location_property + "=" + list(locations),
                  .headers = {"Accept: application/geo+json, application/json"},
                  .content_types = {"json"},
                  .tag = locations.size() == 1 ? 0 : kManyStations};
  if (!question.parameters.empty()) out.url += "&parameter_code=" + list(question.parameters);
  out.url += "&" + query;
  if (out.url.size() > kLongestAddress) {
    out.url = items + query;
    out.body = filter(question, locations);
    out.body_type = "application/query-cql-json";
  }
  if (!access.api_key.empty()) out.secret_header = "X-Api-Key: " + access.api_key;
  return out;
}

std::vector<std::string> parameters() { return {kUsgsParameters.begin(), kUsgsParameters.end()}; }

std::string span(const char* format, Instant from, Instant to) {
  return "&skipGeometry=true&time=" + date::format(format, from) + "/" + date::format(format, to);
}

}  // namespace

std::vector<HttpRequest> ask_usgs_continuous(const Wanted& wanted, const ServiceAccess& access) {
  std::vector<HttpRequest> out;
  for (Instant from = wanted.from; from < wanted.to; from += kLongestSpan) {
    const Question question{.collection = "continuous",
                            .parameters = parameters(),
                            .rest = span("%FT%TZ", from, std::min(wanted.to, from + kLongestSpan))};
    out.push_back(request(question, wanted.stations, access));
  }
  return out;
}

std::vector<HttpRequest> ask_usgs_daily(const Wanted& wanted, const ServiceAccess& access) {
  const Question question{.collection = "daily",
                          .parameters = parameters(),
                          .rest = "&statistic_id=00003" + span("%F", wanted.from, wanted.to)};
  return {request(question, wanted.stations, access)};
}

std::vector<HttpRequest> ask_usgs_stations(const std::vector<std::string>& stations, const ServiceAccess& access) {
  return {request({.collection = "monitoring-locations", .location_property = "id"}, stations, access)};
}

std::vector<HttpRequest> ask_usgs_series(const std::vector<std::string>& stations, const ServiceAccess& access) {
  return {request({.collection = "time-series-metadata", .rest = "&skipGeometry=true"}, stations, access)};
}

std::vector<HttpRequest> ask_usgs_visits(const std::vector<std::string>& stations, const ServiceAccess& access) {
  const Question visits{
      .collection = "field-measurements", .parameters = {"00060", "00065"}, .rest = "&skipGeometry=true"};
  const Question channels{.collection = "channel-measurements", .rest = "&skipGeometry=true"};
  return {request(visits, stations, access), request(channels, stations, access)};
}

}  // namespace floatwright
