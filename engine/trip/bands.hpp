#pragma once
// From three cases to a printed band. Local scatter (sd of the log) is independent of flow and joins only here, in logs:
// half width = sqrt(half width by flow ^2 + (1.2816 sd)^2), each side of the middle alone; 1.2816 is the 90th percentile
// of the normal distribution.
#include <algorithm>
#include <cmath>

#include "engine/units/band.hpp"
#include "engine/units/per_case.hpp"

namespace floatwright {

template <class T>
[[nodiscard]] Band<T> band_of(const PerCase<T>& cases) {
  return {std::min({cases.low, cases.middle, cases.high}), cases.middle, std::max({cases.low, cases.middle, cases.high})};
}

template <class Q>
[[nodiscard]] Band<Q> band_with_scatter(const PerCase<Q>& cases, double sd_ln) {
  constexpr double kNinetieth = 1.2816;
  const Band<Q> by_flow = band_of(cases);
  if (by_flow.low.si() <= 0.0) return by_flow;
  const auto half_width = [&](Q end) { return std::hypot(std::log(end / by_flow.best), kNinetieth * sd_ln); };
  return {by_flow.best * std::exp(-half_width(by_flow.low)), by_flow.best, by_flow.best * std::exp(half_width(by_flow.high))};
}

}  // namespace floatwright
