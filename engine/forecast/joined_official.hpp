#pragma once
// An agency's forecast joined to what a gauge has read, of hours or of days, and what is to be said of it.
#include <optional>

#include "engine/forecast/official.hpp"
#include "engine/forecast/outlook.hpp"

namespace floatwright {

// None where there is none that meets the newest value, outlook.now, which is known.
[[nodiscard]] std::optional<OfficialAhead> joined_official(const OutlookInputs& in, Instant until, GaugeOutlook& outlook);

}  // namespace floatwright
