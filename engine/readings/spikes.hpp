#pragma once
// Single readings that stand out of their neighbours: a Hampel test with a window by time.
// A row is suspect when it differs from the median of the rows within 3 h on either side (at least 5 of them, itself
// included) by more than 3 scaled median absolute deviations, and neither neighbour stands out on the same side: two
// in a row are taken for a pulse, which below a dam is real. A floor under the deviation keeps the sensor's rounding in
// a flat record from being marked: 2 % of the median for flow and 0.01 m, 0.2 C, 2 FNU or 10 % for the others (judged).
// Scale 1.4826 and 3 deviations: Hampel's identifier, as in R. Pearson, "Outliers in process modeling and
// identification", IEEE Trans. Control Systems Technology 10(1), 2002 (from memory).
#include <cstddef>
#include <vector>

#include "engine/readings/reading.hpp"

namespace floatwright {

inline constexpr Period kSpikeWindow = std::chrono::hours{3};  // on either side

// Indices of the suspect rows, ascending. `rows`: usable rows (each has a value), sorted by time.
[[nodiscard]] std::vector<std::size_t> spikes(const std::vector<Reading>& rows, Variable variable);

}  // namespace floatwright
