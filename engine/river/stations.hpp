#pragma once
// Where the stem is cut: the stations, merged and sorted upstream to downstream, and the span of the river they fill.
#include <optional>
#include <string>
#include <vector>

#include "engine/river/graph.hpp"

namespace floatwright {

struct RiverSpan {
  RiverPlace top, mouth;
};

inline constexpr Length kSamePlace = Length::from_si(2.0);  // closer than this is one station

[[nodiscard]] bool same_place(RiverPlace a, RiverPlace b);
[[nodiscard]] bool lies_on(const RiverSpan& span, RiverPlace place);

// From the topmost to the lowest of accesses, gauges, dams, lakes, named reaches of the stem and notes; none where
// these name no place at all.
[[nodiscard]] std::optional<RiverSpan> river_span(const River& river);

// Everything else is left out where it lies off the span.
[[nodiscard]] std::vector<Station> river_stations(const River& river);

}  // namespace floatwright
