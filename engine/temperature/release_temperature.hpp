#pragma once
// The temperature of what a dam lets out from below: its lake's profile at the depth of the release.
#include <optional>

#include "engine/river/river.hpp"

namespace floatwright {

// A profile stands for a month (judgement), and the release swings by up to 2 C either way (judgement).
inline constexpr TemperatureChange kReleaseSwing = TemperatureChange{2.0};

// Linear between the depths of the profile, held to its ends. None where the dam has no depth of release, no lake ends
// at it, or the profile has no date or is over 30 days from `now`.
[[nodiscard]] std::optional<Temperature> release_temperature(const River& river, const Dam& dam, Instant now);

}  // namespace floatwright
