#pragma once
// The daily means of one station. A date has no hours: a mean is known once its day is over, here 24 h after the date's
// 00:00Z.
#include <vector>

#include "engine/readings/gauge_record.hpp"

namespace floatwright {

// Fills the daily members of the record from `own`, the station's series: of several the one with the newest mean, then
// the smaller series id. Says what was left out; where a variable has no other record, its newest mean joins `newest`.
void take_daily(GaugeRecord& record, const std::vector<GaugeSeries>& own, Instant now);

}  // namespace floatwright
