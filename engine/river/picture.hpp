#pragma once
// A drawing of the river in plain letters, down the page, upstream at the top: what `check` shows so that a person sees
// at a glance whether the file means the river they know. At most 78 columns.
#include <string>
#include <vector>

#include "engine/river/graph.hpp"

namespace floatwright {

[[nodiscard]] std::vector<std::string> river_picture(const River& river, const RiverGraph& graph);

}  // namespace floatwright
