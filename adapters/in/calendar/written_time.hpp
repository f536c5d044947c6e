#pragma once
// Time as services and people write it: an instant with its offset, or a daily label, the date of a local day.
// ISO 8601 as far as it is met: "2018-11-03T01:45:00.000-04:00", "...Z", "...+0000", "2025-12-26", and a date at
// midnight without a zone for a daily label. Years 1800 to 2200.
#include <optional>
#include <string_view>

#include "engine/units/instant.hpp"

namespace floatwright {

// The offset is the one written; seconds may be left out. None where there is no offset or the date or hour can't be. Parts of a second are
// dropped.
[[nodiscard]] std::optional<Instant> instant_in(std::string_view text);

// The date at 00:00Z; whatever zone follows is not used, since the date is the station's own.
[[nodiscard]] std::optional<Instant> date_label_in(std::string_view text);

}  // namespace floatwright
