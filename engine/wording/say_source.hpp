#pragma once
// Where flow and water temperature of a reach come from, and the same for a whole float in one sentence.
#include <string>
#include <vector>

#include "engine/trip/day_plan.hpp"

namespace floatwright {

// "between the gauges heron and ferry", "1.03 of gauge ferry by area", "unknown: no gauge speaks for this water"
[[nodiscard]] std::string say(const FlowSource& source, const River& river, UnitSystem units);
// "gauge ferry, 5.2 mi downstream"
[[nodiscard]] std::string say(const TemperatureSource& source, const River& river, UnitSystem units);

// "the channel was measured from 1,000 to 2,000 cfs", "the rating goes from 250 to 4,500 cfs"
[[nodiscard]] std::string say(const KnownFlows& known, UnitSystem units);

// "between the gauges heron and ferry above mile 28.9, from gauge ferry by drainage area below"
[[nodiscard]] std::string say_flow_sources(const std::vector<PlannedReach>& reaches, const River& river,
                                           UnitSystem units);
// "gauge ferry (up to 5.2 mi away)"
[[nodiscard]] std::string say_temperature_sources(const std::vector<PlannedReach>& reaches, const River& river,
                                                  UnitSystem units);

}  // namespace floatwright
