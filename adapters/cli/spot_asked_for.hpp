#pragma once
// --at SPOT: the spot of river.json with that id, or what the user may have meant.
#include <optional>
#include <string>

#include "adapters/result.hpp"
#include "engine/river/river.hpp"

namespace floatwright {

// The index into River::spots; none where nothing was asked for. An unknown id fails with the known ones, nearest first.
[[nodiscard]] Result<std::optional<std::size_t>> spot_asked_for(const River& river, const std::string& id);

}  // namespace floatwright
