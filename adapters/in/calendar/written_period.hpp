#pragma once
// A span of time as ISO 8601 writes it (section 5.5.2.2 of ISO 8601-1:2019, from memory): P5Y, P2W, P1DT12H, PT90M.
#include <optional>
#include <string_view>

#include "engine/units/instant.hpp"

namespace floatwright {

// None: not written so, nothing named, no whole numbers, or over 200 years. A year counts 365.2425 days and a month a
// twelfth of that, as the calendar has on average: enough for how far back to look.
[[nodiscard]] std::optional<Period> period_in(std::string_view text);

}  // namespace floatwright
