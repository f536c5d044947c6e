#include <algorithm>

#include "engine/readings/gauge_record.hpp"

namespace floatwright {
namespace {

template <int L, int M, int T, class Meaning>
Quantity<L, M, T, Meaning> between(Quantity<L, M, T, Meaning> a, Quantity<L, M, T, Meaning> b, double share) {
  return Quantity<L, M, T, Meaning>::from_si(a.si() + share * (b.si() - a.si()));
}
Temperature between(Temperature a, Temperature b, double share) { return a + share * (b - a); }

}  // namespace

template <class T>
Measured<T> value_at(const Series<T>& series, Instant t, Period widest_gap) {
  if (series.empty()) return Absent{"no usable reading"};
  if (t < series.times.front()) return Absent{"before the first usable reading"};
  if (t > series.times.back()) return Absent{"after the newest usable reading"};

  const auto after = std::lower_bound(series.times.begin(), series.times.end(), t);
  const auto i = static_cast<std::size_t>(after - series.times.begin());
  if (*after == t) return series.values[i];
  const Period gap = *after - series.times[i - 1];
  if (gap > widest_gap) return Absent{"a gap in the readings"};
  const double share = static_cast<double>((t - series.times[i - 1]).count()) / static_cast<double>(gap.count());
  return between(series.values[i - 1], series.values[i], share);
}

template Measured<Discharge> value_at(const Series<Discharge>&, Instant, Period);
template Measured<Stage> value_at(const Series<Stage>&, Instant, Period);
template Measured<Temperature> value_at(const Series<Temperature>&, Instant, Period);
template Measured<Turbidity> value_at(const Series<Turbidity>&, Instant, Period);

}  // namespace floatwright
