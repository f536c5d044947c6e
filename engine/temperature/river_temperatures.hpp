#pragma once
// Water temperature by reach and hour. This far: each gauge's own daily curve carried forward
// (T(t+h) = T(t+h-24k h) + a (T(t) - T(t-24 h))), taken by the reaches near it with a band that grows with distance,
// and unknown elsewhere: a temperature is never invented. Three cases of their own, at middle flow.
#include <string>
#include <vector>

#include "engine/readings/gauge_record.hpp"
#include "engine/river/graph.hpp"
#include "engine/units/per_case.hpp"

namespace floatwright {

struct RiverTemperatures {
  TimeGrid grid;
  // By reach: one PerCase per grid step, or why it is unknown.
  std::vector<Measured<std::vector<PerCase<Temperature>>>> reach;
  std::vector<std::string> source;  // by reach
};

[[nodiscard]] RiverTemperatures river_temperatures(const River& river, const RiverGraph& graph,
                                                   const std::vector<GaugeRecord>& records,  // by River::gauges index
                                                   const TimeGrid& grid, Instant now);

[[nodiscard]] Measured<PerCase<Temperature>> temperature_at(const RiverTemperatures& temperatures, std::size_t reach,
                                                            Instant t);

}  // namespace floatwright
