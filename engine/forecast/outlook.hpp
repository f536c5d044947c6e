#pragma once
// Tomorrow at one gauge: the river's state named, the method its row of the table gives, and three cases of discharge
// over the whole grid (the observed past is the same in each). y = ln Q throughout. The default bands are judgement.
// States and bands: engine/choice/judgement is not used here; see docs/equations.md for the table and its origin.
#include <string>
#include <vector>

#include "engine/forecast/from_above.hpp"
#include "engine/forecast/state_and_method.hpp"
#include "engine/forecast/tuned_daily_flow.hpp"
#include "engine/readings/weather.hpp"
#include "engine/river/river.hpp"
#include "engine/units/per_case.hpp"

namespace floatwright {

struct GaugeOutlook {
  std::string gauge;
  FlowState state = FlowState::Unknown;
  FlowMethod method = FlowMethod::None;
  std::string why;                 // the numbers that named the state: "up 4 % in 6 h"
  std::string source;              // what the forecast was made from, where that is more than the last days' readings
  std::vector<std::string> notes;  // sentences on the record and the releases that the forecast was made from
  Measured<Discharge> now;         // newest usable value
  bool only_daily_means = false;   // `now` is a day's mean, at that day's noon
  Instant now_at{};
  double change_6h = 0.0;  // ln ratio over the last 6 h; 0 where unknown
  // Per grid step: observed (interpolated) where known, forecast after; Absent as a whole where nothing can be said.
  Measured<PerCase<std::vector<Discharge>>> flow;
  Instant forecast_from{};  // first grid instant that is forecast
};

struct OutlookInputs {
  const GaugeRecord& record;
  const Dam* dam_above = nullptr;  // the ramping dam this gauge stands below, if any
  bool dam_close = false;          // the schedule's flow is this gauge's flow (no tributary between)
  bool snow_fed = false;
  std::string time_zone;
  const TunedFlow* tuned = nullptr;                // what was fitted to this gauge's record
  const FromAbove* above = nullptr;                // what the gauge above has shown
  const TunedDailyFlow* tuned_daily = nullptr;     // what was fitted to its daily means, for when there is no more
  const Series<Discharge>* daily_above = nullptr;  // daily means of tuned_daily->gauge_above
  const Weather* weather = nullptr;                // where the river is
};

// `grid` covers at least 72 h before `now` and the day planned; nothing later than `now` is read from the record.
[[nodiscard]] GaugeOutlook gauge_outlook(const OutlookInputs& in, const TimeGrid& grid, Instant now);

}  // namespace floatwright
