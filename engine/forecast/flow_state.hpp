#pragma once
// The river's state at one gauge, named from the last 72 h in a fixed order: regulated, daily wave, rising, falling,
// steady. Thresholds are in ln Q and are judgement (docs/equations.md).
#include <array>
#include <string>

#include "engine/forecast/flow_history.hpp"
#include "engine/forecast/outlook.hpp"

namespace floatwright {

struct DailyWave {
  bool present = false;
  bool tested = false;           // false: less than 72 h of record, or a gap in it
  std::array<double, 3> span{};  // of each 24 h window in ln Q, oldest first, less its own straight line
};

// The wave test on the three 24 h windows that end at `end`: each spans over 0.03, neighbours correlate 0.7 or more.
[[nodiscard]] DailyWave daily_wave(const FlowHistory& history, Instant end);

// A wave ended within the last ten days (tested once a day back from the newest row).
[[nodiscard]] bool wave_lately(const FlowHistory& history);

struct NamedState {
  FlowState state = FlowState::Unknown;
  std::string why;
};
// `history` has rows.
[[nodiscard]] NamedState name_state(const FlowHistory& history, bool below_ramping_dam, bool snow_fed);

}  // namespace floatwright
