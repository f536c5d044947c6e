#include "adapters/in/gauges/usgs_water_data/ask_one_station.hpp"

#include <fmt/format.h>

#include <nlohmann/json.hpp>
#include <optional>
#include <set>
#include <vector>

#include "adapters/in/gauges/plain_text.hpp"
#include "adapters/in/gauges/usgs_water_data/read_answer.hpp"
#include "adapters/in/http/http_run.hpp"
#include "adapters/in/http/web_address.hpp"

namespace floatwright {
namespace {

using Json = nlohmann::json;

// 14 days of the same hour and a day over; 50000 is the most the service gives at once.
constexpr const char* kQuery =
    "parameter_code=00060,00065,00010,63680,00076&time=P15D&limit=50000&skipGeometry=true&f=json";
constexpr std::size_t kMostPages = 40;

Failure failure(const std::string& where, const std::string& what) { return {where + ": " + what, kExitNothingMade}; }

// One try: a page is asked for in the middle of a walk, and the walk is made again half an hour later.
Result<HttpAnswer> answer_to(const UsgsAsking& asking, const std::string& url) {
  HttpManners manners;
  manners.user_agent = asking.user_agent;
  manners.ca_file = asking.ca_file;
  manners.most_tries = 1;
  HttpRequest request{
      .url = url, .headers = {"Accept: application/geo+json, application/json"}, .content_types = {"json"}};
  if (!asking.api_key.empty()) request.secret_header = "X-Api-Key: " + asking.api_key;
  Result<HttpAnswer> out;
  http_run({request}, manners, [&](const HttpRequest&, Result<HttpAnswer> answer) {
    out = std::move(answer);
    return std::vector<HttpRequest>{};
  });
  if (out && out->status == 404)
    return tl::unexpected(failure(without_query(url),
                                  "the service answered with status 404; look at the station's number in river.json"));
  return out;
}

struct Fetched {
  std::string bytes;
  std::optional<std::string> next;
};

Result<Fetched> fetch_page(const UsgsAsking& asking, const std::string& url) {
  auto answer = answer_to(asking, url);
  if (!answer) return tl::unexpected(answer.error());
  const std::string where = without_query(url);
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
