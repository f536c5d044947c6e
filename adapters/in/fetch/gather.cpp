#include "adapters/in/fetch/gather.hpp"

#include <fmt/format.h>

#include <algorithm>

#include "adapters/in/fetch/own_files.hpp"
#include "adapters/in/fetch/stations.hpp"
#include "adapters/in/files/station_name.hpp"
#include "adapters/in/gauges/payload.hpp"
#include "engine/readings/forecasts.hpp"

namespace floatwright {
namespace {

// What the archive holds of the stations; a station that can't be read is told.
Payloads held(const Archive& archive, const std::vector<std::string>& stations, Instant from, Instant now) {
  Payloads out;
  for (const std::string& station : stations) {
    auto series = archive.series_of(station, from, Instant::max(), now);
    if (!series) {
      out.troubles.push_back(series.error().what);
      continue;
    }
    std::ranges::move(*series, std::back_inserter(out.series));
  }
  return out;
}

Payloads only_read(const std::vector<std::string>& stations, Instant from, const GatherOrder& order) {
  const auto archive = Archive::open_to_read(*order.archive);
  if (archive) return held(*archive, stations, from, order.fetch.now);
  return {.series = {}, .troubles = {archive.error().what}};
}

Payloads fetched_and_read(const Configuration& configuration, const std::vector<std::string>& stations, Instant from,
                          const GatherOrder& order) {
  std::vector<std::string> troubles;
  const ServicesAsked services(configuration.readings, troubles);
  auto archive = order.archive ? Archive::open_to_write(*order.archive, order.fetch.clock)
                               : Result<Archive>(tl::unexpected(Failure{"no place for an archive: name one in settings.json"}));
  if (!archive) troubles.push_back(archive.error().what + "; what is fetched is not kept");
  Fetched fetched = fetch(stations, services, archive ? &*archive : nullptr, order.fetch);
  std::ranges::move(fetched.troubles, std::back_inserter(troubles));
  if (archive) troubles.insert(troubles.end(), archive->notes().begin(), archive->notes().end());

  std::vector<Payloads> all{{.series = std::move(fetched.not_kept), .troubles = std::move(troubles)}};
  if (archive)
    all.push_back(held(*archive, stations, from, order.fetch.now));
  else if (order.archive && std::filesystem::exists(*order.archive))
    all.push_back(only_read(stations, from, order));
  return merged(all);
}

bool is_known_station(const std::string& station) {
  const auto& known = station_prefixes();
  return std::ranges::find(known, prefix_of(station)) != known.end();
}

std::string source_name(const Configuration& configuration, const GatherOrder& order) {
  if (configuration.readings.payloads) return configuration.readings.payloads->string();
  return order.archive ? order.archive->string() : "what the services sent";
}

// A recorded forecast does not say for which point it was asked: it is taken for the river's own.
Payloads recorded(const std::filesystem::path& directory, const River& river) {
  Payloads payloads = read_payload_directory(directory);
  const auto point = weather_station(river);
  for (GaugeSeries& series : payloads.series) {
    const auto nameless = [&](const GaugeService& s) { return s.prefix == prefix_of(series.station) && !s.names_its_station; };
    if (point && std::ranges::any_of(gauge_services(), nameless)) series.station = *point;
  }
  return payloads;
}

Payloads from_services(const Configuration& configuration, const std::vector<std::string>& stations, Instant from,
                       const GatherOrder& order) {
  if (configuration.readings.payloads) return recorded(*configuration.readings.payloads, configuration.river);
  if (!order.offline) return fetched_and_read(configuration, stations, from, order);
  if (order.archive) return only_read(stations, from, order);
  return {.series = {}, .troubles = {"offline, and there is no place for an archive: name one in settings.json"}};
}

}  // namespace

Payloads gather_series(const Configuration& configuration, const std::vector<std::string>& stations, Instant from,
                       const GatherOrder& order) {
  const bool all_are_files = std::ranges::all_of(stations, [](const auto& station) { return prefix_of(station) == "csv"; });
  Payloads own = read_own_files(configuration.readings.csv_gauges, stations);
  return all_are_files ? own : merged({own, from_services(configuration, stations, from, order)});
}

Gathered gather_readings(const Configuration& configuration, const GatherOrder& order) {
  Gathered out;
  const Instant now = order.fetch.now;
  const Payloads payloads = gather_series(configuration, stations_of(configuration.river), now - kFirstSpan, order);
  const std::string source = source_name(configuration, order);
  for (const GaugeSite& gauge : configuration.river.gauges) {
    out.records.push_back(gauge_record(gauge.id, gauge.station, payloads.series, source, now));
    if (!gauge.forecast.empty())
      out.records.back().official = official_forecast(gauge.forecast, payloads.series, now);
    if (!is_known_station(gauge.station))
      out.troubles.push_back(fmt::format(
          "gauge {}: no service here has a station \"{}\"; in river.json write it as usgs:NUMBER", gauge.id, gauge.station));
    else if (out.records.back().newest.empty())
      out.troubles.push_back(
          fmt::format("gauge {} ({}): no reading up to now in {}", gauge.id, gauge.station, source));
  }
  if (const auto station = weather_station(configuration.river)) out.weather = weather(*station, payloads.series, now);
  out.troubles.insert(out.troubles.begin(), payloads.troubles.begin(), payloads.troubles.end());
  return out;
}

}  // namespace floatwright
