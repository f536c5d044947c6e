#include "adapters/in/gauges/gather.hpp"

#include <optional>
#include <set>

#include "adapters/in/gauges/fetch_stations.hpp"
#include "adapters/in/gauges/payload_directory.hpp"

namespace floatwright {
namespace {

std::set<std::string> known_stations(const River& river, std::vector<std::string>& troubles) {
  std::set<std::string> out;
  for (const GaugeSite& gauge : river.gauges) {
    if (is_known_station(gauge.station))
      out.insert(gauge.station);
    else
      troubles.push_back("gauge " + gauge.id + ": no service here has a station \"" + gauge.station +
                         "\"; in river.json write it as usgs:NUMBER");
  }
  return out;
}

Payloads payloads_of(const std::set<std::string>& stations, const ReadingsPlace& place, Instant now, bool offline,
                     const ServiceAddresses& addresses) {
  if (place.payloads) return read_payload_directory(*place.payloads);
  if (offline && !place.archive)
    return {.series = {}, .troubles = {"offline, and there is no archive to read: name one in settings.json"}};
  std::vector<Payloads> all;
  if (!offline) all.push_back(fetch_stations(stations, place, now, addresses));
  if (place.archive) all.push_back(read_payload_directory(*place.archive));
  return merged(all);
}

std::string source_name(const ReadingsPlace& place, const ServiceAddresses& addresses) {
  if (place.payloads) return place.payloads->string();
  return place.archive ? place.archive->string() : addresses.usgs_water_data;
}

}  // namespace

Gathered gather_readings(const Configuration& configuration, Instant now, bool offline,
                         const ServiceAddresses& addresses) {
  Gathered out;
  const auto stations = known_stations(configuration.river, out.troubles);
  const ReadingsPlace& place = configuration.readings;
  const Payloads payloads = payloads_of(stations, place, now, offline, addresses);
  out.troubles.insert(out.troubles.end(), payloads.troubles.begin(), payloads.troubles.end());

  for (const GaugeSite& gauge : configuration.river.gauges) {
    out.records.push_back(gauge_record(gauge.id, gauge.station, payloads.series, source_name(place, addresses), now));
    if (out.records.back().newest.empty() && stations.contains(gauge.station))
      out.troubles.push_back("gauge " + gauge.id + " (" + gauge.station + "): no reading up to now in " +
                             source_name(place, addresses));
  }
  return out;
}

}  // namespace floatwright
