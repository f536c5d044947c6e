#pragma once
// The next two days' means from a gauge's daily record, fitted where there is a fit, each with its band.
#include <array>
#include <string>
#include <vector>

#include "engine/forecast/daily_record.hpp"
#include "engine/forecast/flow_band.hpp"
#include "engine/forecast/tuned_daily_flow.hpp"

namespace floatwright {

struct DayAhead {
  double change = 0.0;  // of y = ln Q from the newest mean
  LnBand band;
  bool fitted = false;
};

struct DailyAhead {
  FlowState state = FlowState::Unknown;  // Unknown: the day before the newest has no mean
  double d = 0.0;                        // change of y over the newest day; 0 where it is not known
  std::array<DayAhead, 2> days;
};

// From the end of the last day of `own`, which has rows. `tuned` and `above` may be none.
[[nodiscard]] DailyAhead daily_ahead(const DailyRecord& own, const TunedDailyFlow* tuned, const DailyRecord* above);

}  // namespace floatwright
