#pragma once
// Two gauges whose records are compared, and the changes of flow that were seen at both.
#include <string>
#include <vector>

#include "engine/routing/matched_changes.hpp"
#include "engine/routing/tune_lag.hpp"
#include "engine/routing/wave_travel.hpp"

namespace floatwright {

struct LagPair {
  const LagTuningInputs& in;
  const GaugeSite &upper, &lower;  // both on the stem, the first above the second

  [[nodiscard]] Length apart() const { return *upper.place - *lower.place; }
  // The river without wave times, and with these lags alone.
  [[nodiscard]] River river_with(std::vector<FittedLag> lags) const {
    River river = in.river;
    river.wave_times.clear();
    river.fitted_lags = std::move(lags);
    return river;
  }
  [[nodiscard]] WavePath path(const River& river, Discharge flow) const {
    return wave_between(river, in.graph, *upper.place, *lower.place, flow);
  }
  // Somewhere between the channel is a guess.
  [[nodiscard]] bool guessed(const River& river) const;
};

// Why no lag can be looked for between the two places; empty where one can.
[[nodiscard]] std::string no_way_down(const LagTuningInputs& in);

// At least kLeastChanges, or why there are not as many. Of a record whose lag became another at some time only what
// came after. What is odd is added to the report's notes.
[[nodiscard]] Measured<std::vector<MatchedChange>> changes_at_both(const LagPair& pair, const PairedFlows& flows,
                                                                   LagReport& report);

}  // namespace floatwright
