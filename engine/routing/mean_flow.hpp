#pragma once
// The mean of a row of flows, for parameters that are fixed over a run.
#include <vector>

#include "engine/units/unit.hpp"

namespace floatwright {

// Zero for an empty row.
[[nodiscard]] inline Discharge mean_flow(const std::vector<Discharge>& flow) {
  Discharge sum;
  for (const Discharge q : flow) sum = sum + q;
  return flow.empty() ? sum : sum / static_cast<double>(flow.size());
}

}  // namespace floatwright
