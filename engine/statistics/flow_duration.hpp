#pragma once
// Flow duration: which share of the time a value is reached or exceeded. The m-th largest of n values is exceeded for
// m/(n+1) of the time (Weibull's plotting position), straight lines between.
#include <vector>

#include "engine/units/measured.hpp"

namespace floatwright {

struct DurationCurve {
  std::vector<double> values;  // largest first, of any unit
  std::vector<double> shares;  // m/(n+1), rising
};

[[nodiscard]] DurationCurve duration_curve(std::vector<double> values);

// The value exceeded for `share` of the time. Absent beyond the largest or the smallest plotting position: a short
// record does not know its extremes.
[[nodiscard]] Measured<double> exceeded_for(const DurationCurve& curve, double share);

}  // namespace floatwright
