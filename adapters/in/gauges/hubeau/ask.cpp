#include "adapters/in/gauges/hubeau/ask.hpp"

#include <algorithm>
#include <chrono>

#include "adapters/in/gauges/asking.hpp"

namespace floatwright {

std::vector<HttpRequest> ask_hubeau(const Wanted& wanted, const ServiceAccess& access) {
  constexpr Period kKept = std::chrono::days{30};
  constexpr std::size_t kMostTogether = 20;
  std::vector<HttpRequest> out;
  for (const StationGroup& group : groups_of(wanted, kMostTogether))
    out.push_back(json_request(access.base + "/observations_tr?code_entite=" + joined(group.stations) +
                                   "&grandeur_hydro=H,Q&sort=asc&size=20000&date_debut_obs=" +
                                   time_asked(std::max(wanted.from, wanted.to - kKept)) +
                                   "&date_fin_obs=" + time_asked(wanted.to),
                               group.tag));
  return out;
}

}  // namespace floatwright
