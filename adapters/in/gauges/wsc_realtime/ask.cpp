#include "adapters/in/gauges/wsc_realtime/ask.hpp"

#include <date/date.h>

#include <chrono>

#include "adapters/in/gauges/asking.hpp"

namespace floatwright {
namespace {

constexpr Period kShort = std::chrono::days{62};
constexpr Period kLongest = std::chrono::days{540};
constexpr std::size_t kMostTogether = 10;

// "2025-10-21%2000:00:00"; brackets stand in an address as %5B and %5D (RFC 3986).
std::string time(Instant instant) { return date::format("%F%%20%T", instant); }

}  // namespace

std::vector<HttpRequest> ask_wsc_realtime(const Wanted& wanted, const ServiceAccess& access) {
  std::vector<HttpRequest> out;
  const std::size_t together = wanted.to - wanted.from <= kShort ? kMostTogether : 1;
  for (const StationGroup& group : groups_of(wanted, together))
    for (const AskedPiece& piece : pieces_of(wanted, kLongest)) {
      HttpRequest request{
          .url = access.base +
                 "/services/real_time_data/csv/inline?stations%5B%5D=" + joined(group.stations, "&stations%5B%5D=") +
                 "&parameters%5B%5D=46&parameters%5B%5D=47&parameters%5B%5D=5&start_date=" + time(piece.from) +
                 "&end_date=" + time(piece.to),
          .headers = {"Accept: text/csv"},
          .content_types = {"csv", "text/plain", "octet-stream"},
          .tag = group.tag};
      out.push_back(std::move(request));
    }
  return out;
}

}  // namespace floatwright
