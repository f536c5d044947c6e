#pragma once
// The frame of a picture of something through the hours: title and legend over it, values written at the left, local
// hours and days under it, and rows over it for what happens in some of the hours.
#include <string>
#include <vector>

#include "adapters/out/figure/axis.hpp"
#include "adapters/out/figure/drawing.hpp"
#include "engine/units/instant.hpp"
#include "engine/wording/clock.hpp"

namespace floatwright {

struct ValueTick {
  double value = 0.0;
  std::string figure;
};
// In some of the hours: a bar, and what it is.
struct HoursRow {
  std::string words;
  std::vector<std::pair<Instant, Instant>> bars;
};
struct PlotWanted {
  double width = 0.0, height = 0.0;  // of the plot itself, without what is written around it
  std::vector<std::string> heading;  // the first is the title
  double least = 0.0, most = 0.0;
  std::vector<ValueTick> ticks;
  Instant from{}, to{};
  std::vector<HoursRow> rows;
};

struct Plot {
  Drawing drawing;
  Axis hours, values;  // of seconds since 1970, and of the values

  [[nodiscard]] DrawnPoint at(Instant t, double value) const {
    return {hours.at(static_cast<double>(t.time_since_epoch().count())), values.at(value)};
  }
};

[[nodiscard]] Plot framed_plot(const PlotWanted& wanted, const LocalClock& clock);

}  // namespace floatwright
