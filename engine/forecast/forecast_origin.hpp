#pragma once
// One gauge at the moment when a forecast is made: everything that was known then and nothing that was not.
#include <optional>
#include <string>

#include "engine/forecast/ahead.hpp"
#include "engine/forecast/flow_history.hpp"
#include "engine/forecast/flow_state.hpp"
#include "engine/forecast/from_above.hpp"

namespace floatwright {

struct ForecastOrigin {
  FlowHistory history;  // has rows; the forecast starts at the newest
  FlowState state = FlowState::Unknown;
  bool after_wave = false;  // one ended within ten days: its default band is kept
  const FromAbove* above = nullptr;
  std::string time_zone;

  [[nodiscard]] Instant at() const { return history.newest(); }
  [[nodiscard]] double ln_now() const;
  // The untuned method with its default band: the state's, or below a dam the same hours, holding where none was seen.
  [[nodiscard]] LnCases untuned(Instant t) const;
};

// The change of flow that the gauge above has shown by the origin and that has arrived by `t`, in ln of this gauge's
// flow; 0 where that is not known.
[[nodiscard]] double change_from_above(const ForecastOrigin& origin, Instant t);

// The last instant of which the gauge above has told: the lag ahead, less where its own readings are older.
[[nodiscard]] Instant told_from_above_until(const ForecastOrigin& origin);

// Below a dam and until then: the flow brought down plus what this gauge has read over it in the mean of the last
// 24 h; near the origin its newest reading leads, its weight fading by e^-(lead/2 h). None elsewhere.
[[nodiscard]] std::optional<double> ln_from_above(const ForecastOrigin& origin, Instant t);

}  // namespace floatwright
