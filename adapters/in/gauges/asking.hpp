#pragma once
// What the requests to the services have in common.
#include <cstddef>
#include <string>
#include <vector>

#include "adapters/in/gauges/service.hpp"
#include "adapters/in/http/http_run.hpp"

namespace floatwright {

struct AskedPiece {
  Instant from{}, to{};
};
// The span in pieces of at most `longest`, in order.
[[nodiscard]] std::vector<AskedPiece> pieces_of(const Wanted& wanted, Period longest);

struct StationGroup {
  std::vector<std::string> stations;  // ready to stand in an address
  std::size_t tag = kManyStations;
};
// All together where they are no more than `most`, else each for itself: a tag says all stations or one.
[[nodiscard]] std::vector<StationGroup> groups_of(const Wanted& wanted, std::size_t most);
[[nodiscard]] std::string joined(const std::vector<std::string>& all, const std::string& between = ",");

[[nodiscard]] HttpRequest json_request(std::string url, std::size_t tag);
[[nodiscard]] std::string time_asked(Instant time);  // "2026-05-01T00:00:00Z"
[[nodiscard]] std::string date_asked(Instant time);  // "2026-05-01"

}  // namespace floatwright
