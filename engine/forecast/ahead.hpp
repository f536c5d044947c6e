#pragma once
// The ways to carry a gauge's flow past its newest reading, one point at a time, as ln Q in three cases.
#include <optional>
#include <string>
#include <vector>

#include "engine/forecast/flow_history.hpp"
#include "engine/forecast/flow_state.hpp"
#include "engine/forecast/release_plan.hpp"

namespace floatwright {

struct LnCases {
  double low = 0.0, middle = 0.0, high = 0.0;  // ln(Q / (m3/s)), low <= middle <= high
};

// Hold, fading fall or the shape of the daily wave, with the state's default band.
[[nodiscard]] LnCases by_state(const FlowHistory& history, FlowState state, bool after_wave, Instant t);

// The least that a rising river is taken to sink to by `t`, ln Q: the rise of the last 72 h undone and the flow before
// it sunk as a steady river's low case. None in other states. `history` has rows, `t` lies ahead of them. Of 1,750
// hours of rise in two years of USGS 01581752 under 2 % sank lower within two days.
[[nodiscard]] std::optional<double> ln_least_after_rise(const FlowHistory& history, FlowState state, Instant t);

// ln Q at the hour of `t` on earlier days, wall clock of the zone.
struct SameHours {
  std::optional<double> like_day, week_ago;  // the last day of the same kind (weekday or weekend); seven days before
  std::vector<double> all;                   // of the 14 days before
};
[[nodiscard]] SameHours same_hours(const FlowHistory& history, Instant t, const std::string& time_zone);

// Mean in ln of the same hour on the last day of the same kind (weekday or weekend) and of a week ago; band from least
// to most of the same hour in the last 14 days. With under five such hours the band is no narrower than that of a rise.
// None where neither day has a reading.
[[nodiscard]] std::optional<LnCases> same_hour(const FlowHistory& history, Instant t, const std::string& time_zone);

// Median of gauge over schedule in the last 24 h, hours within two of a change left out; held to 0.9 to 1.1, and 1
// where the schedule does not reach back.
[[nodiscard]] double gauge_over_schedule(const FlowHistory& history, const Dam& dam);

// The schedule times `ratio`, 10 % either way; before its first line the newest reading.
[[nodiscard]] LnCases by_schedule(const FlowHistory& history, const Dam& dam, double ratio, Instant t);

}  // namespace floatwright
