#include "adapters/out/figure/hatching.hpp"

#include <algorithm>
#include <cmath>

namespace floatwright {
namespace {

constexpr double kThin = 0.5;  // points

// Which of the lines x + y = c a point lies on.
double slant(DrawnPoint p) { return p.x + p.y; }

std::vector<DrawnPoint> crossings(const std::vector<DrawnPoint>& outline, double c) {
  std::vector<DrawnPoint> found;
  for (std::size_t i = 0; i < outline.size(); ++i) {
    const DrawnPoint a = outline[i], b = outline[(i + 1) % outline.size()];
    if ((slant(a) <= c) == (slant(b) <= c)) continue;
    const double share = (c - slant(a)) / (slant(b) - slant(a));
    found.push_back({a.x + share * (b.x - a.x), a.y + share * (b.y - a.y)});
  }
  std::sort(found.begin(), found.end(), [](DrawnPoint a, DrawnPoint b) { return a.x < b.x; });
  return found;
}

}  // namespace

std::vector<Stroke> hatching(const HatchedArea& area) {
  std::vector<Stroke> lines;
  if (area.outline.size() < 3 || area.spacing <= 0.0) return lines;
  const auto [low, high] = std::minmax_element(area.outline.begin(), area.outline.end(),
                                               [](DrawnPoint a, DrawnPoint b) { return slant(a) < slant(b); });
  const double step = area.spacing * std::sqrt(2.0);  // along x, for `spacing` across the lines
  for (double c = std::ceil(slant(*low) / step) * step; c < slant(*high); c += step) {
    const std::vector<DrawnPoint> ends = crossings(area.outline, c);
    for (std::size_t i = 0; i + 1 < ends.size(); i += 2) lines.push_back({{ends[i], ends[i + 1]}, kThin, false});
  }
  return lines;
}

}  // namespace floatwright
