#include "engine/sinking/line_step.hpp"

namespace floatwright {

double level_share(const LineState& start, const LineState& k1, const LineStep& step, double ds) {
  constexpr int kNewtonSteps = 4;
  const double a = start.py, da = ds * k1.py, b = step.end.py, db = ds * step.slope_there.py;  // N
  const double square = 3.0 * (b - a) - 2.0 * da - db, cube = 2.0 * (a - b) + da + db;         // N
  double t = a / (a - b);
  for (int i = 0; i < kNewtonSteps; ++i) {
    const double slope = da + t * (2.0 * square + 3.0 * cube * t);
    if (!(slope < 0.0)) break;
    t = std::clamp(t - (a + t * (da + t * (square + t * cube))) / slope, 0.0, 1.0);
  }
  return t;
}

LineState level_state(const LineState& start, const LineState& k1, const LineStep& step, double ds, double share) {
  const double t = share, rest = 1.0 - t;
  LineState level = start.times(rest * rest * (1.0 + 2.0 * t))
                        .plus(rest * rest * t * ds, k1)
                        .plus(t * t * (1.0 + 2.0 * rest), step.end)
                        .plus(-t * t * rest * ds, step.slope_there);
  level.py = 0.0;
  return level;
}

}  // namespace floatwright
