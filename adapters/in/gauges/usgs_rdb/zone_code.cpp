#include "adapters/in/gauges/usgs_rdb/zone_code.hpp"

#include <algorithm>
#include <array>
#include <chrono>
#include <utility>

#include "adapters/in/calendar/written_time.hpp"

namespace floatwright {
namespace {

constexpr std::array<std::pair<std::string_view, int>, 18> kHoursEast{{{"UTC", 0},
                                                                       {"GMT", 0},
                                                                       {"AST", -4},
                                                                       {"ADT", -3},
                                                                       {"EST", -5},
                                                                       {"EDT", -4},
                                                                       {"CST", -6},
                                                                       {"CDT", -5},
                                                                       {"MST", -7},
                                                                       {"MDT", -6},
                                                                       {"PST", -8},
                                                                       {"PDT", -7},
                                                                       {"AKST", -9},
                                                                       {"AKDT", -8},
                                                                       {"HST", -10},
                                                                       {"HDT", -9},
                                                                       {"SST", -11},
                                                                       {"ChST", 10}}};

}  // namespace

std::optional<Period> east_of_greenwich(std::string_view zone_code) {
  const auto* const found =
      std::find_if(kHoursEast.begin(), kHoursEast.end(), [&](const auto& row) { return row.first == zone_code; });
  if (found == kHoursEast.end()) return std::nullopt;
  return std::chrono::hours{found->second};
}

std::optional<Instant> local_instant_in(std::string_view date_and_time, std::string_view zone_code) {
  constexpr std::size_t kDate = 10, kLongest = 19;  // "2018-11-04", "2018-11-04 01:45:00"
  const auto east = east_of_greenwich(zone_code);
  if (!east || date_and_time.size() <= kDate || date_and_time.size() > kLongest || date_and_time[kDate] != ' ')
    return std::nullopt;
  std::array<char, kLongest + 1> text{};
  std::copy(date_and_time.begin(), date_and_time.end(), text.begin());
  text[kDate] = 'T';
  text[date_and_time.size()] = 'Z';
  const auto as_utc = instant_in({text.data(), date_and_time.size() + 1});
  if (!as_utc) return std::nullopt;
  return *as_utc - *east;
}

}  // namespace floatwright
