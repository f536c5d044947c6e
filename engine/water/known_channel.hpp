#pragma once
// The channel of a reach of which more is known than its flow. The flow alone gives a width and a speed that do for a
// travel time (channel_of), not for a depth to fish in.
#include <optional>

#include "engine/water/channel.hpp"

namespace floatwright {

// In the order of trust of channel_of, down to the drainage area.
[[nodiscard]] std::optional<Channel> known_channel(const River& river, const Reach& reach);

}  // namespace floatwright
