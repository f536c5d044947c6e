#pragma once
// The flow one gauge has shown up to `now`, as ln Q at any past instant. Straight lines (in Q) bridge gaps of up to 6
// h; a wider gap has no value here. Rows that are not above zero have no logarithm and are left out.
#include <optional>
#include <vector>

#include "engine/readings/gauge_record.hpp"

namespace floatwright {

inline constexpr Period kWidestBridgedGap = std::chrono::hours{6};

struct FlowHistory {
  Series<Discharge> rows;  // usable, above zero, not after `now`

  [[nodiscard]] Instant newest() const { return rows.times.back(); }  // the caller has asked rows.empty()
  // ln(Q / (m3/s)); none across a wide gap, before the first row and after the newest.
  [[nodiscard]] std::optional<double> ln_flow(Instant t) const;
  // As ln_flow; a wider gap is crossed by a straight line in ln, before the first row the first is held, after the newest
  // the newest. There are rows.
  [[nodiscard]] double ln_flow_or_between(Instant t) const;
  // y(t) - y(t - 6 h) at the newest row.
  [[nodiscard]] std::optional<double> change_6h() const;
};

[[nodiscard]] FlowHistory flow_history(const Series<Discharge>& record, Instant now);

// What the forecasts look back on at most: ten days after a wave of three, same hours of 14 days.
inline constexpr Period kLookedBackOn = std::chrono::hours{24 * 15};
// The rows of `all` within kLookedBackOn up to `t`: what was known then.
[[nodiscard]] FlowHistory known_at(const FlowHistory& all, Instant t);

// The step to which the rows of the last 72 h are rounded, at most 1 % of the newest (services print three figures).
// Zero where they are not rounded.
[[nodiscard]] Discharge rounding_step(const FlowHistory& history);

// The coarsest power of ten of ft3/s or of m3/s that all of them are multiples of; zero where there is none.
[[nodiscard]] Discharge common_step(const std::vector<Discharge>& flows);

// `ln_change`, the change that led to ln_flow `after`, or 0 where that is under twice the rounding.
[[nodiscard]] double counted_change(double ln_change, double after, Discharge rounding);

}  // namespace floatwright
