#pragma once
// What was handed out before for the same day, so that a new plan can say what changed; kept in the state directory.
// A run that has no such directory goes on without: nothing but that sentence is lost.
#include <filesystem>
#include <vector>

#include "engine/plan_day.hpp"

namespace floatwright {

// Fills DayInputs::before of each boat that has an earlier plan. A file that can't be read is told on standard error.
void recall(std::vector<BoatDay>& boats, const std::filesystem::path& configuration);

// Called when the plans have left the house. Says on standard error why they can't be kept if `verbose`.
void remember(const std::vector<BoatDay>& boats, const std::filesystem::path& configuration, bool verbose);

}  // namespace floatwright
