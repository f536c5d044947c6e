#pragma once
// Water temperature by reach and hour: each gauge's own daily curve carried forward, taken by the reaches near it with
// a band that grows with distance, and unknown elsewhere: a temperature is never invented. Three cases of their own, at
// middle flow.
#include <optional>
#include <span>
#include <string>
#include <vector>

#include "engine/readings/gauge_record.hpp"
#include "engine/routing/river_flows.hpp"
#include "engine/temperature/tuned_temperature.hpp"
#include "engine/units/per_case.hpp"

namespace floatwright {

// Whose temperature a reach has.
struct TemperatureSource {
  std::optional<std::size_t> gauge{};    // into River::gauges
  Length away{};                         // along the river; zero: the gauge stands in the reach
  bool downstream = false;               // the gauge stands below the reach
  bool daily_means = false;              // of which only the level is known
  std::optional<std::size_t> dam{};      // into River::dams: of its release, in place of a gauge
  std::optional<std::size_t> down_to{};  // into River::gauges: followed down to this one, and closed on it
  std::string why_unknown{};             // neither gauge nor dam

  [[nodiscard]] bool known() const { return gauge || dam; }
};

struct RiverTemperatures {
  TimeGrid grid;
  // By reach: one PerCase per grid step, or why it is unknown.
  std::vector<Measured<std::vector<PerCase<Temperature>>>> reach;
  std::vector<TemperatureSource> source;  // by reach
};

struct TemperatureInputs {
  const River& river;
  const RiverGraph& graph;
  const std::vector<GaugeRecord>& records;  // by River::gauges index
  const RiverFlows& flows;
  TimeGrid grid;
  Instant now{};
  Series<Temperature> air{};                  // forecast where the river is; empty: not known
  std::span<const TunedTemperature> tuned{};  // of gauges of this river
};
[[nodiscard]] RiverTemperatures river_temperatures(const TemperatureInputs& in);

[[nodiscard]] Measured<PerCase<Temperature>> temperature_at(const RiverTemperatures& temperatures, std::size_t reach,
                                                            Instant t);

}  // namespace floatwright
