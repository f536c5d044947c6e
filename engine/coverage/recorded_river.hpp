#pragma once
// The river on a past day: each gauge's mean of that day carried to every reach as a plan carries its flows (river_flows),
// as though they had held all day. Water temperature is each gauge's mean of the day, between two gauges of the same
// water in a straight line along the river, else the nearest one's within the bounds of temperature_gauge(). Releases
// that were typed for a dam are of other days and do not count: the gauges have seen what came.
#include <chrono>
#include <optional>
#include <utility>
#include <vector>

#include "engine/routing/river_flows.hpp"
#include "engine/temperature/river_temperatures.hpp"

namespace floatwright {

struct RiverOnDate {
  Instant noon{};  // the one instant of both
  RiverFlows flows;
  RiverTemperatures temperatures;
};

class RecordedRiver {
 public:
  // `records`: by River::gauges index. The graph stays the caller's.
  RecordedRiver(River river, const RiverGraph& graph, const std::vector<GaugeRecord>& records);

  // From the first to the last date on which any gauge has a flow; none: no flow is on record.
  [[nodiscard]] std::optional<std::pair<std::chrono::sys_days, std::chrono::sys_days>> span() const { return span_; }
  // None: no gauge has a flow on that date.
  [[nodiscard]] std::optional<RiverOnDate> on(std::chrono::sys_days date) const;

 private:
  struct GaugeDays {
    Series<Discharge> flow;
    Series<Temperature> temperature;
  };
  [[nodiscard]] std::vector<GaugeOutlook> outlooks_on(std::chrono::sys_days date) const;
  [[nodiscard]] RiverTemperatures temperatures_on(std::chrono::sys_days date, const TimeGrid& grid) const;
  River river_;
  const RiverGraph& graph_;
  std::vector<GaugeDays> gauges_;  // by River::gauges
  std::optional<std::pair<std::chrono::sys_days, std::chrono::sys_days>> span_;
};

}  // namespace floatwright
