#pragma once
// A gauge's record on an even row of instants, for what compares or routes two records step by step.
#include <vector>

#include "engine/readings/gauge_record.hpp"

namespace floatwright {

// The median time between rows; zero with fewer than two.
[[nodiscard]] Period usual_step(const Series<Discharge>& record);

// A gap of over three hours and over four usual steps is never bridged by a straight line.
[[nodiscard]] Period bridged_gap(Period usual_step);

// m3/s, straight lines between rows; NaN outside the record and across a gap.
[[nodiscard]] std::vector<double> on_grid(const Series<Discharge>& record, const TimeGrid& grid);

// From the first whole step (counted from 1970) that is not before `first` to the last one not after `last`.
[[nodiscard]] TimeGrid even_grid(Instant first, Instant last, Period step);

}  // namespace floatwright
