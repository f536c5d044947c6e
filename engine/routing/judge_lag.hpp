#pragma once
// How good a lag between two gauges is: the hours of rises, and the lower gauge's flow made from the upper one's.
#include <functional>
#include <vector>

#include "engine/routing/brought_down.hpp"
#include "engine/routing/matched_changes.hpp"
#include "engine/routing/muskingum.hpp"
#include "engine/routing/tune_lag.hpp"
#include "engine/routing/wave_travel.hpp"

namespace floatwright {

// `lag` of a front by its flow; `judged` is the margin that is counted, `told` the one whose earliest a plan prints. No
// rises: all zero.
[[nodiscard]] RiseScore rise_score(const std::vector<MatchedChange>& changes,
                                   const std::function<Duration(Discharge)>& lag, FrontMargin judged, FrontMargin told);

// A part of two records on one grid, ready to be routed: what is not known above is bridged for the routing alone.
struct RoutedPart {
  Period step{};
  std::vector<Discharge> above, below;  // bridged
  std::vector<bool> known;              // both, and nothing bridged above within a day before
};
// Rows from the first to before the last; empty where a gauge has not a row in them.
[[nodiscard]] RoutedPart routed_part(const PairedFlows& flows, std::size_t first, std::size_t last);

// `arriving` with what enters between, as a centred 24 h mean of the difference; where steps are over 6 h, since that
// would give the answer away, by the ratio `growth` of the two records' means instead.
[[nodiscard]] RoutedScore routed_score(const RoutedPart& part, const std::vector<Discharge>& arriving, double growth);

[[nodiscard]] double growth_between(const RoutedPart& part);  // mean below over mean above

}  // namespace floatwright
