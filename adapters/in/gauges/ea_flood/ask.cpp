#include "adapters/in/gauges/ea_flood/ask.hpp"

#include "adapters/in/gauges/asking.hpp"

namespace floatwright {

std::vector<HttpRequest> ask_ea_flood(const Wanted& wanted, const ServiceAccess& access) {
  std::vector<HttpRequest> out;
  for (const StationGroup& group : groups_of(wanted, 1))
    out.push_back(json_request(access.base + "/id/stations/" + group.stations.front() +
                                   "/readings?_sorted&_limit=10000&since=" + time_asked(wanted.from),
                               group.tag));
  return out;
}

}  // namespace floatwright
