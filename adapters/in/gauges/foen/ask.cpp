#include "adapters/in/gauges/foen/ask.hpp"

#include <chrono>

#include "adapters/in/gauges/asking.hpp"

namespace floatwright {

std::vector<HttpRequest> ask_foen(const Wanted& wanted, const ServiceAccess& access) {
  constexpr Period kLongest = std::chrono::days{30};  // it takes 32, and a day is added below
  constexpr std::size_t kMostTogether = 10;
  std::vector<HttpRequest> out;
  for (const StationGroup& group : groups_of(wanted, kMostTogether))
    for (const AskedPiece& piece : pieces_of(wanted, kLongest))
      out.push_back(json_request(access.base + "/daterange?locations=" + joined(group.stations) +
                                     "&parameters=flow,flow_ls,height,temperature&timeseriesformat=rows&startdate=" +
                                     date_asked(piece.from) + "&enddate=" + date_asked(piece.to + std::chrono::days{1}),
                                 group.tag));
  return out;
}

}  // namespace floatwright
