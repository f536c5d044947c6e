#pragma once
// The zone codes that USGS writes beside a local time (tz_cd): each stands for one fixed offset, EDT for summer time as
// EST for standard, so the repeated hour of autumn is told apart.
#include <optional>
#include <string_view>

#include "engine/units/instant.hpp"

namespace floatwright {

[[nodiscard]] std::optional<Period> east_of_greenwich(std::string_view zone_code);

// "2018-11-04 01:45" or with seconds, and "EDT".
[[nodiscard]] std::optional<Instant> local_instant_in(std::string_view date_and_time, std::string_view zone_code);

}  // namespace floatwright
