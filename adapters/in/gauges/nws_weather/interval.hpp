#pragma once
// A stretch of time as ISO 8601 has it: "2026-09-22T06:00:00+00:00/PT6H", or with two instants.
#include <optional>
#include <string_view>

#include "engine/units/instant.hpp"

namespace floatwright {

struct Interval {
  Instant from{}, to{};
};

// Days, hours and minutes. None: written otherwise, empty, or longer than a month.
[[nodiscard]] std::optional<Interval> interval_in(std::string_view text);

}  // namespace floatwright
