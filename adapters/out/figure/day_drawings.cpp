#include "adapters/out/figure/day_drawings.hpp"

#include <algorithm>

#include "adapters/out/figure/hydrograph.hpp"
#include "adapters/out/figure/line_picture.hpp"

namespace floatwright {
namespace {

constexpr double kNarrowest = 240.0;  // points

}  // namespace

Drawings day_drawings(const DayPlan& plan, const DayInputs& in, double width) {
  Drawings drawings;
  const double drawn = std::max(width, kNarrowest);
  const LocalClock clock(plan.time_zone);
  if (const auto history = flow_history(plan, in))
    drawings["hydrograph"] = hydrograph(*history, in.settings.units, clock, drawn);
  if (auto line = line_picture(told(plan, in), drawn)) drawings["line"] = *std::move(line);
  return drawings;
}

}  // namespace floatwright
