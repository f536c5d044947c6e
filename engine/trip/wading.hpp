#pragma once
// Wading by depth times speed. Basis: adults stand up to 0.6 m2/s in the tests behind Australian Rainfall & Runoff
// Project 10 (Cox, Shand & Blacka 2010; from memory), which is 6.5 ft2/s; never over 4 ft. The rule of 10 ft2/s of stream
// gaging is for trained gaugers on a known section. Limits typed by a person count only where they are stricter.
#include <string>

#include "engine/trip/caution.hpp"
#include "engine/trip/settings.hpp"
#include "engine/water/lane.hpp"

namespace floatwright {

inline constexpr const char* kTooMuchToWade = "too deep or too fast to wade";

struct WadingLimits {
  DepthTimesSpeed product = DepthTimesSpeed::from_si(0.6);  // depth x mean speed
  Length depth = feet(4.0);
  bool typed = false;  // the product is a person's own
};

[[nodiscard]] WadingLimits wading_limits(const Settings& settings);

struct WadedLane {
  Length depth;
  Speed speed;  // mean over the depth
  [[nodiscard]] DepthTimesSpeed product() const { return depth * speed; }
};
// The lane in the high case: what a wader must be able to stand in. Of a guessed lane the upper end of its band.
[[nodiscard]] WadedLane waded(const Lane& lane);
[[nodiscard]] bool too_much_to_wade(const Lane& lane, const WadingLimits& limits);

}  // namespace floatwright
