#pragma once
// A lag as a power law of flow through the changes seen at two gauges, and where in a record it became another.
#include <optional>
#include <vector>

#include "engine/routing/matched_changes.hpp"

namespace floatwright {

struct LagLaw {  // t(Q) = time (at_flow/Q)^exponent
  Discharge at_flow;
  Duration time;
  double exponent = 0.0;

  [[nodiscard]] Duration at(Discharge flow) const;
};

// The median over the changes, at their median flow; there is one. To the rises alone where there are ten: falls come
// later than the same law says, and a rise told late is the one that hurts.
[[nodiscard]] LagLaw lag_law(const std::vector<MatchedChange>& changes, double exponent);

// Exponent 0.34, unless 30 changes fit another (0 to 0.60) with a mean error that is a tenth smaller.
[[nodiscard]] LagLaw fitted_lag_law(const std::vector<MatchedChange>& changes);

struct LagShift {
  std::size_t at = 0;      // the first change of the new lag
  Duration before, after;  // medians of the lag less the law's
};
// Where the lags part most into an earlier and a later lot (ten changes each at the least), if their medians lie 20
// minutes, a quarter of the law's time and half a `step` apart: a moved gauge, a clock. Judgement.
[[nodiscard]] std::optional<LagShift> lag_shift(const std::vector<MatchedChange>& changes, const LagLaw& law,
                                                Period step);

}  // namespace floatwright
