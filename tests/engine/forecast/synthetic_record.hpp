#pragma once
// Records made by formula, for tests: `flow_at` gives m3/s by hours before the newest reading (0 is the newest).
#include <functional>

#include "engine/readings/gauge_record.hpp"
#include "engine/units/unit.hpp"

namespace floatwright {

inline constexpr Instant kNow =
    std::chrono::sys_days{std::chrono::year{2027} / 5 / 13} + std::chrono::hours{18};  // a Thursday

inline GaugeRecord record_of(int hours_back, const std::function<double(int)>& flow_at, Instant newest = kNow) {
  GaugeRecord record;
  record.gauge = "ferry";
  for (int h = hours_back; h >= 0; --h) {
    record.discharge.times.push_back(newest - std::chrono::hours{h});
    record.discharge.values.push_back(cubic_metres_per_second(flow_at(h)));
  }
  return record;
}

// Hourly, from 96 h before `now` to 36 h after.
inline TimeGrid grid_around(Instant now = kNow) { return {now - std::chrono::hours{96}, std::chrono::hours{1}, 133}; }

}  // namespace floatwright
