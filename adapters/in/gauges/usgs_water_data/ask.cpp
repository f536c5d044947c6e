#include "adapters/in/gauges/usgs_water_data/ask.hpp"

#include <fmt/format.h>

#include <nlohmann/json.hpp>
#include <optional>
#include <set>
#include <vector>

#include "adapters/in/gauges/plain_text.hpp"
#include "adapters/in/gauges/service_error.hpp"
#include "adapters/in/gauges/usgs_water_data/read_answer.hpp"
#include "adapters/in/http/http_get.hpp"
#include "adapters/in/http/web_address.hpp"

namespace floatwright {
namespace {

using Json = nlohmann::json;

// 14 days of the same hour and a day over; 50000 is the most the service gives at once.
constexpr const char* kQuery =
    "parameter_code=00060,00065,00010,63680,00076&time=P15D&limit=50000&skipGeometry=true&f=json";
constexpr std::size_t kMostPages = 40;

Failure failure(const std::string& where, const std::string& what) { return {where + ": " + what, kExitNothingMade}; }

std::string advice(int status) {
  if (status == 429) return "; asked too often: wait an hour, or name an api_key_file in settings.json";
  if (status == 401 || status == 403) return "; look at the key in api_key_file";
  if (status == 404) return "; look at the station's number in river.json";
  return "; try again later";
}

std::optional<Failure> why_no_answer(const HttpAnswer& answer, const std::string& where) {
  if (answer.status != 200) {
    const auto error = service_error(answer.body);
    return failure(where, fmt::format("the service answered with status {}{}{}", answer.status,
                                      error ? ", " + *error : "", advice(answer.status)));
  }
  if (lower_case(answer.content_type).find("json") == std::string::npos)
    return failure(where,
                   fmt::format("the service sent \"{}\", not JSON; it may have moved", shown(answer.content_type)));
  return std::nullopt;
}

struct Fetched {
  std::string bytes;
  std::optional<std::string> next;
};

Result<Fetched> fetch_page(const UsgsAsking& asking, const std::string& url) {
  HttpRequest request;
  request.url = url;
  request.user_agent = asking.user_agent;
  request.ca_file = asking.ca_file;
  request.headers = {"Accept: application/geo+json, application/json"};
  if (!asking.api_key.empty()) request.headers.push_back("X-Api-Key: " + asking.api_key);
  auto answer = http_get(request);
  if (!answer) return tl::unexpected(answer.error());
  const std::string where = without_query(url);
  if (const auto wrong = why_no_answer(*answer, where)) return tl::unexpected(*wrong);
  const auto page = read_usgs_water_data(answer->body, where);
  if (!page) return tl::unexpected(page.error());
  return Fetched{std::move(answer->body), page->next};
}

// The key goes along to the next page, so it must be on the same server.
Result<std::string> next_address(const std::string& page, const std::string& link) {
  const auto to = resolved(page, link);
  const auto from_parts = web_address(page), to_parts = to ? web_address(*to) : std::nullopt;
  if (!from_parts || !to_parts || from_parts->scheme != to_parts->scheme || from_parts->host != to_parts->host ||
      from_parts->port != to_parts->port)
    return tl::unexpected(failure(
        without_query(page), "the next page is on another server (" + shown(without_query(link)) + "), not followed"));
  return *to;
}

std::string one_text(const std::vector<std::string>& pages) {
  if (pages.size() == 1) return pages.front();
  Json whole = Json::parse(pages.front());
  for (std::size_t i = 1; i < pages.size(); ++i) {
    Json page = Json::parse(pages[i]);
    for (Json& feature : page["features"]) whole["features"].push_back(std::move(feature));
  }
  whole.erase("links");
  whole["numberReturned"] = whole["features"].size();
  return whole.dump();
}

}  // namespace

Result<std::string> ask_usgs_water_data(const UsgsAsking& asking, const std::string& location) {
  std::string url =
      fmt::format("{}/collections/continuous/items?monitoring_location_id={}&{}", asking.base, location, kQuery);
  std::vector<std::string> pages;
  std::set<std::string> seen;
  const auto broken_off = [&](const Failure& why) {
    if (pages.empty()) return why;
    return Failure{
        fmt::format("{} (after {} pages, which were not kept: they are not the whole answer)", why.what, pages.size()),
        why.exit_code};
  };
  while (seen.insert(url).second && pages.size() < kMostPages) {
    auto page = fetch_page(asking, url);
    if (!page) return tl::unexpected(broken_off(page.error()));
    pages.push_back(std::move(page->bytes));
    if (!page->next) return one_text(pages);
    const auto next = next_address(url, *page->next);
    if (!next) return tl::unexpected(broken_off(next.error()));
    url = *next;
  }
  return tl::unexpected(broken_off(failure(without_query(url), "the pages have no end")));
}

}  // namespace floatwright
