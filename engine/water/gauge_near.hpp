#pragma once
// The gauge whose section or rating speaks for a reach: on the stem, with no dam, lake, diversion, side channel or
// tributary between, so that both see one flow. Depth and speed change from riffle to pool within a few widths, so a
// gauge's section is not the reach; for the rise of its surface and for its wave it stands in to 5 km (judgement).
#include <cstddef>
#include <optional>
#include <vector>

#include "engine/river/graph.hpp"

namespace floatwright {

inline constexpr Length kGaugeSpeaksFor = kilometres(5.0);

struct GaugeNear {
  std::size_t gauge = 0;  // index into River::gauges
  Length away;            // along the river, from the nearer end of the reach; 0 within it
};

// All of them, the nearest first; none in a side channel.
[[nodiscard]] std::vector<GaugeNear> gauges_of_one_flow(const River& river, const Reach& reach);

}  // namespace floatwright
