#include "adapters/in/gauges/nwps/ask.hpp"

#include "adapters/in/gauges/asking.hpp"

namespace floatwright {

std::vector<HttpRequest> ask_nwps(const Wanted& wanted, const ServiceAccess& access) {
  std::vector<HttpRequest> out;
  for (const StationGroup& group : groups_of(wanted, 1))
    out.push_back(json_request(access.base + "/gauges/" + group.stations.front() + "/stageflow", group.tag));
  return out;
}

}  // namespace floatwright
