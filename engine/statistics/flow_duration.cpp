#include "engine/statistics/flow_duration.hpp"

#include <algorithm>
#include <cstddef>
#include <functional>
#include <utility>

namespace floatwright {

DurationCurve duration_curve(std::vector<double> values) {
  DurationCurve curve{std::move(values), {}};
  std::sort(curve.values.begin(), curve.values.end(), std::greater<>{});
  const auto all = static_cast<double>(curve.values.size() + 1);
  for (std::size_t rank = 1; rank <= curve.values.size(); ++rank)
    curve.shares.push_back(static_cast<double>(rank) / all);
  return curve;
}

Measured<double> exceeded_for(const DurationCurve& curve, double share) {
  const auto next = std::lower_bound(curve.shares.begin(), curve.shares.end(), share);
  if (next == curve.shares.end()) return Absent{"the record is too short for so long a share of the time"};
  const auto i = static_cast<std::size_t>(next - curve.shares.begin());
  if (*next == share) return curve.values[i];
  if (i == 0) return Absent{"the record is too short for so small a share of the time"};
  const double along = (share - curve.shares[i - 1]) / (*next - curve.shares[i - 1]);
  return curve.values[i - 1] + along * (curve.values[i] - curve.values[i - 1]);
}

}  // namespace floatwright
