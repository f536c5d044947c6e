#pragma once
// The flow one gauge has shown up to `now`, as ln Q at any past instant. Straight lines (in Q) bridge gaps of up to 6
// h; a wider gap has no value here. Rows that are not above zero have no logarithm and are left out.
#include <optional>

#include "engine/readings/gauge_record.hpp"

namespace floatwright {

inline constexpr Period kWidestBridgedGap = std::chrono::hours{6};

struct FlowHistory {
  Series<Discharge> rows;  // usable, above zero, not after `now`

  [[nodiscard]] Instant newest() const { return rows.times.back(); }  // the caller has asked rows.empty()
  // ln(Q / (m3/s)); none across a wide gap, before the first row and after the newest.
  [[nodiscard]] std::optional<double> ln_flow(Instant t) const;
  // y(t) - y(t - 6 h) at the newest row.
  [[nodiscard]] std::optional<double> change_6h() const;
};

[[nodiscard]] FlowHistory flow_history(const Series<Discharge>& record, Instant now);

// The step to which the rows of the last 72 h are rounded: the coarsest power of ten of ft3/s or of m3/s that they are
// all multiples of, at most 1 % of the newest (services print three figures). Zero where they are not rounded.
[[nodiscard]] Discharge rounding_step(const FlowHistory& history);

}  // namespace floatwright
