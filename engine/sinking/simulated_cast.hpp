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

// Absent with the reason: a part of no length or diameter, water of no depth, a speed that is not a number, more line
// out than there is of the body. Takes some 30 ms at the fine resolution.
[[nodiscard]] Measured<SimulatedCast> simulated_cast(const CastCase& in, Duration until = seconds(60.0),
                                                     const Resolution& resolution = kFine);

// What is wrong with a case, in a sentence; empty: nothing.
[[nodiscard]] std::string fault_of(const CastCase& in);

}  // namespace floatwright
