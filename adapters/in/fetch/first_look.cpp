#include "adapters/in/fetch/first_look.hpp"

#include <fmt/format.h>

#include <algorithm>
#include <set>

#include "adapters/in/fetch/next_page.hpp"
#include "adapters/in/gauges/asking.hpp"
#include "adapters/in/gauges/payload_directory.hpp"
#include "adapters/in/gauges/usgs_water_data/ask.hpp"
#include "adapters/in/gauges/usgs_water_data/stations.hpp"
#include "adapters/in/http/web_address.hpp"

namespace floatwright {
namespace {

Failure nothing(const std::string& what) { return {what, kExitNothingMade}; }

// One page of what USGS says of a station; the request for the next, if there is one.
Result<std::optional<HttpRequest>> taken(UsgsStations& all, std::set<std::string>& pages, const HttpRequest& request,
                                         const Result<HttpAnswer>& answer) {
  const std::string where = without_query(request.url);
  if (!answer) return tl::unexpected(nothing(answer.error().what));
  if (answer->status == 404) return tl::unexpected(nothing(where + ": the service has nothing there"));
  const auto link = all.take(answer->body, where);
  if (!link) return tl::unexpected(nothing(link.error().what));
  if (!*link) return std::nullopt;
  if (!pages.insert(request.url).second)
    return tl::unexpected(nothing(where + ": the pages have no end: one came twice"));
  return next_page(request, **link);
}

Result<StationAbout> usgs_about(const std::string& station, const ServiceAccess& access, const HttpManners& manners) {
  UsgsStations all;
  std::set<std::string> pages;
  std::optional<Failure> failed;
  std::vector<HttpRequest> first = ask_usgs_stations({number_of(station)}, access);
  std::ranges::move(ask_usgs_series({number_of(station)}, access), std::back_inserter(first));
  http_run(std::move(first), manners, [&](const HttpRequest& request, Result<HttpAnswer> answer) {
    auto next = taken(all, pages, request, answer);
    if (!next && !failed) failed = next.error();
    return next && *next ? std::vector{std::move(**next)} : std::vector<HttpRequest>{};
  });
  if (failed) return tl::unexpected(*failed);
  const auto stations = all.stations();
  const auto named = std::ranges::find_if(stations, [](const StationAbout& about) { return !about.name.empty(); });
  if (named == stations.end())
    return tl::unexpected(nothing(station + ": the service knows no such station; look at its number"));
  return *named;
}

// Where nobody tells of the station, its readings may name it.
void name_by_readings(FirstLook& look) {
  for (const GaugeSeries& series : look.series)
    if (look.about.name.empty()) look.about.name = series.station_name;
}

}  // namespace

Result<FirstLook> first_look(const std::string& station, const ServicesAsked& services, const FetchOrder& order) {
  FirstLook out;
  out.about.station = station;
  const ServiceAsked* asked = services.of(station);
  if (asked == nullptr) {
    out.troubles.push_back(
        fmt::format("{}: no service here is asked for such a station; its answers are read from files", station));
    return out;
  }
  if (asked->service->name == "usgs-water-data") {
    auto about = usgs_about(station, asked->access, order.manners);
    if (!about) return tl::unexpected(about.error());
    out.about = std::move(*about);
    out.about.station = station;
    out.described = true;
  }
  FetchOrder last_days = order;
  last_days.since = kFirstLook;
  Fetched fetched = fetch({station}, services, nullptr, last_days);
  out.series = std::move(fetched.not_kept);
  out.troubles = std::move(fetched.troubles);
  if (!out.described && out.series.empty())
    return tl::unexpected(nothing(out.troubles.empty()
                                      ? station + ": the service has no reading of it in the last days; "
                                                  "look at its number"
                                      : joined(out.troubles, "; ")));
  name_by_readings(out);
  return out;
}

Result<FirstLook> first_look_in(const std::filesystem::path& directory, const std::string& station) {
  std::error_code error;
  if (!std::filesystem::is_directory(directory, error))
    return tl::unexpected(Failure{directory.string() + ": no such directory", kExitNoInput});
  const auto stations = stations_in_payload_directory(directory);
  if (!stations) return tl::unexpected(stations.error());

  FirstLook out;
  out.about.station = station;
  const auto found = std::ranges::find(*stations, station, &StationAbout::station);
  out.described = found != stations->end();
  if (out.described) out.about = *found;
  Payloads payloads = read_payload_directory(directory);
  std::ranges::copy_if(payloads.series, std::back_inserter(out.series),
                       [&](const GaugeSeries& series) { return series.station == station; });
  out.troubles = std::move(payloads.troubles);
  if (!out.described && out.series.empty()) {
    if (!out.troubles.empty()) return tl::unexpected(Failure{joined(out.troubles, "; "), kExitBadData});
    return tl::unexpected(nothing(fmt::format("{}: no answer there tells of {}", directory.string(), station)));
  }
  name_by_readings(out);
  return out;
}

}  // namespace floatwright
