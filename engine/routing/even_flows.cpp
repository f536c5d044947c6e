#include "engine/routing/even_flows.hpp"

#include <algorithm>
#include <cmath>
#include <limits>

namespace floatwright {

Period usual_step(const Series<Discharge>& record) {
  std::vector<Period> steps;
  for (std::size_t i = 1; i < record.size(); ++i) steps.push_back(record.times[i] - record.times[i - 1]);
  if (steps.empty()) return {};
  const auto middle = steps.begin() + static_cast<std::ptrdiff_t>(steps.size() / 2);
  std::nth_element(steps.begin(), middle, steps.end());
  return *middle;
}

Period bridged_gap(Period usual_step) { return std::max<Period>(4 * usual_step, std::chrono::hours{3}); }

std::vector<double> on_grid(const Series<Discharge>& record, const TimeGrid& grid) {
  std::vector<double> out(grid.count, std::numeric_limits<double>::quiet_NaN());
  const Period widest = bridged_gap(usual_step(record));
  std::size_t row = 0;
  for (std::size_t i = 0; i < grid.count && !record.empty(); ++i) {
    const Instant t = grid.at(i);
    while (row + 1 < record.size() && record.times[row + 1] <= t) ++row;
    if (record.times[row] == t) out[i] = record.values[row].si();
    if (record.times[row] >= t || row + 1 == record.size()) continue;
    const Period gap = record.times[row + 1] - record.times[row];
    const double share = duration(t - record.times[row]) / duration(gap);
    if (gap <= widest) out[i] = std::lerp(record.values[row].si(), record.values[row + 1].si(), share);
  }
  return out;
}

TimeGrid even_grid(Instant first, Instant last, Period step) {
  TimeGrid grid{first, step, 0};
  const auto over = grid.start.time_since_epoch() % step;
  if (over > Period{}) grid.start += step - over;
  if (last >= grid.start) grid.count = static_cast<std::size_t>((last - grid.start) / step) + 1;
  return grid;
}

}  // namespace floatwright
