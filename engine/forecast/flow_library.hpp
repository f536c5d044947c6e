#pragma once
// A gauge's record at even steps, as `tune` keeps it, and parts of it that can be no record of water.
#include <optional>

#include "engine/forecast/flow_history.hpp"
#include "engine/forecast/tuned_flow.hpp"

namespace floatwright {

// ln Q at every step of the whole record, from a midnight (UTC) on, to 4 decimals.
[[nodiscard]] FlowLibrary flow_library(const FlowHistory& history);

// None off the steps, outside and in holes.
[[nodiscard]] std::optional<double> ln_flow_at(const FlowLibrary& library, Instant t);

// Rows without those of any stretch in which the flow stood still to the last figure for ten days or more: a frozen
// sensor tells nothing of the river. Returns how many were left out.
[[nodiscard]] std::size_t leave_out_frozen(FlowHistory& history);

}  // namespace floatwright
