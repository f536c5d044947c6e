#pragma once
// Which of several sensors of one variable is read, and why in a sentence.
#include <cstddef>
#include <optional>
#include <string>
#include <vector>

#include "engine/readings/reading.hpp"

namespace floatwright {

struct SeriesChoice {
  const GaugeSeries* series = nullptr;  // into the vector that was given
  std::string why;                      // a sentence; empty where there was nothing to choose
};

// None: no series of this variable with a row at or before `now`. Daily series and forecasts are no candidates.
[[nodiscard]] std::optional<SeriesChoice> choose_series(const std::vector<GaugeSeries>& all, Variable variable,
                                                        const std::string& gauge, Instant now);

}  // namespace floatwright
