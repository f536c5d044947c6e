#include "adapters/in/gauges/ea_hydrology/ask.hpp"

#include <chrono>

#include "adapters/in/gauges/asking.hpp"

namespace floatwright {

std::vector<HttpRequest> ask_ea_hydrology(const Wanted& wanted, const ServiceAccess& access) {
  constexpr Period kLongest = std::chrono::days{366};
  std::vector<HttpRequest> out;
  for (const StationGroup& group : groups_of(wanted, 1))
    for (const AskedPiece& piece : pieces_of(wanted, kLongest))
      out.push_back(json_request(access.base + "/data/readings.json?station=" + group.stations.front() +
                                     "&mineq-date=" + date_asked(piece.from) + "&maxeq-date=" + date_asked(piece.to) +
                                     "&_limit=2000000",
                                 group.tag));
  return out;
}

}  // namespace floatwright
