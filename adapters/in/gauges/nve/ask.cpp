#include "adapters/in/gauges/nve/ask.hpp"

#include <chrono>

#include "adapters/in/gauges/asking.hpp"

namespace floatwright {

std::vector<HttpRequest> ask_nve(const Wanted& wanted, const ServiceAccess& access) {
  constexpr Period kLongest = std::chrono::days{366};
  constexpr std::size_t kMostTogether = 10;
  std::vector<HttpRequest> out;
  for (const StationGroup& group : groups_of(wanted, kMostTogether))
    for (const AskedPiece& piece : pieces_of(wanted, kLongest)) {
      HttpRequest request =
          json_request(access.base + "/Observations?StationId=" + joined(group.stations) +
                           "&Parameter=1000,1001,1003&ResolutionTime=0&ReferenceTime=" + time_asked(piece.from) + "/" +
                           time_asked(piece.to),
                       group.tag);
      if (!access.api_key.empty()) request.secret_header = "X-API-Key: " + access.api_key;
      out.push_back(std::move(request));
    }
  return out;
}

}  // namespace floatwright
