#pragma once
// Rows of an invented gauge, 15 minutes apart.
#include <string>
#include <vector>

#include "engine/readings/reading.hpp"

namespace floatwright {

inline const Instant kNoon = std::chrono::sys_days{std::chrono::year{2026} / 5 / 13} + std::chrono::hours{12};
inline constexpr Period kQuarter = std::chrono::minutes{15};

inline GaugeSeries flow_series(const std::string& id, const std::vector<double>& values, Instant last = kNoon) {
  GaugeSeries out{.station = "usgs:00000001",
                  .series_id = id,
                  .sensor = {},
                  .station_name = "Lantern below Heron Dam",
                  .source = {},
                  .variable = Variable::Flow,
                  .daily = false,
                  .readings = {},
                  .unknown_codes = {}};
  const auto n = static_cast<Period::rep>(values.size());
  for (Period::rep i = 0; i < n; ++i)
    out.readings.push_back({last - kQuarter * (n - 1 - i), values[static_cast<std::size_t>(i)], {Mark::Provisional}});
  return out;
}

}  // namespace floatwright
