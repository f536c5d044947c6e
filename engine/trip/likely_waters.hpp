#pragma once
// Water that nobody described: in each reach the one that its channel makes likely (water/described.hpp) at the flow of
// the day's noon, worked out once a day. None in a lake, where the flow is unknown or none, and where nothing but the
// flow is known of the channel: what is unknown stays unknown.
#include "engine/trip/river_day.hpp"

namespace floatwright {

[[nodiscard]] LikelyWaters likely_waters(const RiverDay& day);

}  // namespace floatwright
