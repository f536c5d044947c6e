#include "adapters/in/gauges/wsc_geomet/ask.hpp"

#include "adapters/in/gauges/asking.hpp"

namespace floatwright {

std::vector<HttpRequest> ask_wsc_geomet(const Wanted& wanted, const ServiceAccess& access) {
  std::vector<HttpRequest> out;
  for (const StationGroup& group : groups_of(wanted, 1))
    out.push_back(json_request(access.base +
                                   "/collections/hydrometric-realtime/items?f=json&limit=10000&sortby=DATETIME" +
                                   "&STATION_NUMBER=" + group.stations.front() +
                                   "&datetime=" + time_asked(wanted.from) + "/" + time_asked(wanted.to),
                               group.tag));
  return out;
}

}  // namespace floatwright
