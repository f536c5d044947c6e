#pragma once
// What enters (or leaves) unseen between two gauges: the difference of the lower gauge and the routed flow as a 24 h
// mean, since hourly it would turn errors of timing into water. May be negative.
#include <optional>
#include <vector>

#include "engine/units/instant.hpp"
#include "engine/units/unit.hpp"

namespace floatwright {

// Mean over 24 h around each step; near the ends the first or last whole 24 h, or all there is.
[[nodiscard]] std::vector<Discharge> daily_mean(const std::vector<Discharge>& flow, Period step);

struct Closing {
  std::vector<Discharge> inflow;  // total over the stretch
  double largest_share = 0.0;     // largest |inflow| asked for, as a share of the routed flow, before any bound
};

// `bound` is the largest |inflow| as a share of the routed flow's own 24 h mean; none: as much as it takes, though
// never more than nine tenths out of it.
[[nodiscard]] Closing closing_inflow(const std::vector<Discharge>& routed, const std::vector<Discharge>& gauge,
                                     Period step, std::optional<double> bound);

}  // namespace floatwright
