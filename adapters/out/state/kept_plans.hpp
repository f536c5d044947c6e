#pragma once
// The plans handed out last, by configuration and day, in the state directory: plans/CONFIGURATION-YYYY-MM-DD.json.
// Written by this program for itself; a file that is no such thing any more counts as none and is told.
#include <optional>
#include <string>
#include <vector>

#include "adapters/out/files/whole_file.hpp"
#include "engine/trip/handed_out.hpp"

namespace floatwright {

struct PlanDrawer {
  std::filesystem::path state;          // state_directory()
  std::filesystem::path configuration;  // the directory it is kept for
};

// What is kept of a day; empty when nothing is. Failure 65 when it can't be read.
[[nodiscard]] Result<std::vector<HandedOut>> kept_plans(const PlanDrawer& drawer, std::chrono::year_month_day day);

// Puts these in place of what was kept of theirs for their day; days more than a week before are thrown away.
[[nodiscard]] Result<Written> keep_plans(const PlanDrawer& drawer, const std::vector<HandedOut>& plans);

}  // namespace floatwright
