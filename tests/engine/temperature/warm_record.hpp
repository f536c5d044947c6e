#pragma once
// Temperatures made by formula, C by hours before the newest reading (0 is the newest).
#include <cmath>
#include <functional>
#include <numbers>

#include "engine/readings/gauge_record.hpp"

namespace floatwright {

inline constexpr Instant kNow = std::chrono::sys_days{std::chrono::year{2027} / 5 / 13} + std::chrono::hours{18};

inline Series<Temperature> temperatures(int hours_back, const std::function<double(int)>& at, Instant newest = kNow) {
  Series<Temperature> series;
  for (int h = hours_back; h >= 0; --h) {
    series.times.push_back(newest - std::chrono::hours{h});
    series.values.push_back(celsius(at(h)));
  }
  return series;
}
inline double daily_swing(int hours_back) { return 10.0 + 2.0 * std::sin(2 * std::numbers::pi * hours_back / 24.0); }

inline TimeGrid grid_around(Instant now = kNow) { return {now - std::chrono::hours{48}, std::chrono::hours{1}, 97}; }

}  // namespace floatwright
