#include "adapters/in/fetch/stations.hpp"

#include <fmt/format.h>

#include <algorithm>
#include <set>

#include "adapters/in/fetch/api_key.hpp"
#include "adapters/in/gauges/payload.hpp"

namespace floatwright {
namespace {

bool has_prefix(const std::vector<ServiceAsked>& services, const std::string& prefix) {
  return std::ranges::any_of(services, [&](const ServiceAsked& asked) { return asked.service->prefix == prefix; });
}

}  // namespace

std::vector<std::string> stations_of(const River& river) {
  std::set<std::string> out;
  for (const GaugeSite& gauge : river.gauges) {
    out.insert(gauge.station);
    if (!gauge.forecast.empty()) out.insert(gauge.forecast);
  }
  if (const auto station = weather_station(river)) out.insert(*station);
  return {out.begin(), out.end()};
}

std::optional<std::string> weather_station(const River& river) {
  if (!river.weather_at) return std::nullopt;
  return fmt::format("nws:{:.4f},{:.4f}", river.weather_at->latitude_deg, river.weather_at->longitude_deg);
}

std::string prefix_of(const std::string& station) { return station.substr(0, station.find(':')); }

std::string number_of(const std::string& station) { return station.substr(station.find(':') + 1); }

ServicesAsked::ServicesAsked(const ReadingsPlace& place, std::vector<std::string>& troubles) {
  const auto& known = gauge_services();
  for (const ServiceSettings& listed : place.services) {
    const auto service = std::ranges::find(known, listed.name, &GaugeService::name);
    if (service == known.end() || service->ask == nullptr || has_prefix(services_, service->prefix)) continue;
    services_.push_back({&*service, {listed.address.value_or(service->address), api_key(*service, place, troubles)}});
  }
  for (const GaugeService& service : known) {
    if (service.ask == nullptr || has_prefix(services_, service.prefix)) continue;
    services_.push_back({&service, {service.address, api_key(service, place, troubles)}});
  }
}

const ServiceAsked* ServicesAsked::of(const std::string& station) const {
  const std::string prefix = prefix_of(station);
  const auto found = std::ranges::find_if(services_, [&](const ServiceAsked& s) { return s.service->prefix == prefix; });
  return found == services_.end() ? nullptr : &*found;
}

}  // namespace floatwright
