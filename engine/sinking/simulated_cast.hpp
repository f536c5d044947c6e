#pragma once
// A cast simulated from landing on, for an answer that stands alone: where fly and tip are, every 0.1 s
// (docs/equations.md, "The simulated cast"). No constant in it was fitted.
#include <vector>

#include "engine/sinking/cast_case.hpp"
#include "engine/sinking/chain_line.hpp"
#include "engine/units/measured.hpp"

namespace floatwright {

struct SimulatedCast {
  std::vector<CastRow> rows;  // every 0.1 s, until `until` or until a strip is over
  Length deepest_fly, end_fly;
};

// Absent with the reason: what engine/sinking/case_faults.hpp refuses, or a line that flies apart however short the
// steps. Takes some 30 ms at the fine resolution.
[[nodiscard]] Measured<SimulatedCast> simulated_cast(const CastCase& in, Duration until = seconds(60.0),
                                                     const Resolution& resolution = kFine);

}  // namespace floatwright
