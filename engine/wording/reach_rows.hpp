#pragma once
// The rows of the reach table before they are printed: one a water, waters and reaches put together where rod, rig and
// way of fishing are the same.
#include <optional>
#include <string>
#include <vector>

#include "engine/trip/day_plan.hpp"

namespace floatwright {

struct ReachRow {
  const PlannedReach* first = nullptr;  // reaches put together: the first and the last
  const PlannedReach* last = nullptr;
  bool begins_reach = true;  // time and name are printed
  std::vector<WaterType> types;
  bool names_waters = false;                    // the reach has other rows beside this, or had a longer one
  std::optional<Length> depth_low, depth_high;  // best guesses of the waters put together
  std::optional<SurfaceSpeed> speed_low, speed_high;
  bool doubtful = false;  // a depth guessed, or a flow far from the note's
  std::optional<ScoredRig> best;
  std::optional<Length> fly_low, fly_high;
  std::string why_none;  // with no `best`
};

// A reach that isn't fished has one row without types.
[[nodiscard]] std::vector<ReachRow> reach_rows(const PlannedStretch& stretch);

}  // namespace floatwright
