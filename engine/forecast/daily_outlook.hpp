#pragma once
// Tomorrow and the day after at a gauge of which only daily means are known. A mean stands at its day's noon, straight
// lines in ln between; the band of a day holds from its first hour. Two days past the newest mean the flow is only
// held.
#include "engine/forecast/outlook.hpp"

namespace floatwright {

// Absent where the newest mean of a day that is over is more than two days old. `now` of the outlook is that mean.
[[nodiscard]] GaugeOutlook daily_outlook(const OutlookInputs& in, const TimeGrid& grid, Instant now);

}  // namespace floatwright
