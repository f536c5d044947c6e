#pragma once
// How the river stands at a gauge against a day ago: by its stage where that is known on both days, else by its flow.
#include <string>

#include "engine/readings/gauge_record.hpp"
#include "engine/trip/settings.hpp"

namespace floatwright {

// "2 1/2 in lower", "as high", "12 % less"; empty where a reading of today or of a day ago is missing. A reading older
// than kStaleAfter at `now` is none of today.
[[nodiscard]] std::string say_since_yesterday(const GaugeRecord& record, Instant now, UnitSystem units);

}  // namespace floatwright
