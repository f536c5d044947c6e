#pragma once
// A configuration and its readings as what a day is made from; what the day's readings mean for the exit code.
#include <optional>

#include "adapters/cli/common_options.hpp"
#include "adapters/in/fetch/gather.hpp"
#include "engine/plan_day.hpp"

namespace floatwright {

// What was logged beside the configuration is learned; what is wrong with the log is told on standard error.
[[nodiscard]] DayInputs day_inputs(const CommonOptions& options, Configuration&& configuration, Instant now,
                                   std::chrono::year_month_day day, Gathered&& gathered);
// The same in two: what does not hang on readings, and these.
[[nodiscard]] DayInputs day_inputs(const CommonOptions& options, Configuration&& configuration, Instant now,
                                   std::chrono::year_month_day day);
void read_into(DayInputs& in, Gathered&& gathered);

// Why no plan can be made of the day asked for, now that what is known of it was read (69); none where one can.
[[nodiscard]] std::optional<Failure> day_out_of_reach(const DayInputs& in);

// Tells on standard error when nothing could be made (69) or the readings are old or not all there (75); else `otherwise`.
[[nodiscard]] int told_how_fresh(const DayPlan& plan, const char* what, int otherwise);

}  // namespace floatwright
