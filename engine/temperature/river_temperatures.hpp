#pragma once
// Water temperature by reach and hour. This far: each gauge's own daily curve carried forward
// (T(t+h) = T(t+h-24k h) + a (T(t) - T(t-24 h))), taken by the reaches near it with a band that grows with distance,
// and unknown elsewhere: a temperature is never invented. Three cases of their own, at middle flow.
#include <optional>
#include <string>
#include <vector>

#include "engine/readings/gauge_record.hpp"
#include "engine/river/graph.hpp"
#include "engine/units/per_case.hpp"

namespace floatwright {

// Whose temperature a reach has.
struct TemperatureSource {
  std::optional<std::size_t> gauge;  // into River::gauges; none: unknown
  Length away{};                     // along the river; zero: the gauge stands in the reach
  bool downstream = false;           // the gauge stands below the reach
  std::string why_unknown{};
};

struct RiverTemperatures {
  TimeGrid grid;
  // By reach: one PerCase per grid step, or why it is unknown.
  std::vector<Measured<std::vector<PerCase<Temperature>>>> reach;
  std::vector<TemperatureSource> source;  // by reach
};

[[nodiscard]] RiverTemperatures river_temperatures(const River& river, const RiverGraph& graph,
                                                   const std::vector<GaugeRecord>& records,  // by River::gauges index
                                                   const TimeGrid& grid, Instant now);

[[nodiscard]] Measured<PerCase<Temperature>> temperature_at(const RiverTemperatures& temperatures, std::size_t reach,
                                                            Instant t);

}  // namespace floatwright
