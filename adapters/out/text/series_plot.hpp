#pragma once
// A series over time drawn with keys: 9 lines high, 60 columns wide beside its scale. An asterisk is the mean of the
// column's readings, an x at the foot stands where there are readings but none that can be used; a gap stays empty.
#include <functional>
#include <string>
#include <vector>

#include "engine/readings/reading.hpp"

namespace floatwright {

struct PlotScale {
  Instant from{}, to{};
  std::function<std::string(double si)> value;        // "1,850 cfs", at the left
  std::function<std::string(Instant)> mark;           // "Wed 12 May", under the first column in which it is another
  std::function<bool(const Reading&)> is_usable;
};

// Empty where the span holds no reading.
[[nodiscard]] std::vector<std::string> series_plot(const std::vector<Reading>& readings, const PlotScale& scale);

}  // namespace floatwright
