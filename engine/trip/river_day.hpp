#pragma once
// What every part of the trip looks at: the river, the people, and the day's flow and temperature. Only references; the
// owner (plan_day) keeps them alive.
#include <chrono>
#include <string>
#include <vector>

#include "engine/choice/choose.hpp"
#include "engine/learning/learned.hpp"
#include "engine/readings/weather.hpp"
#include "engine/routing/river_flows.hpp"
#include "engine/temperature/river_temperatures.hpp"
#include "engine/trip/settings.hpp"
#include "engine/trip/sun.hpp"

namespace floatwright {

// By reach of the graph the water that is likely where nobody described one (likely_waters.hpp): one, or none.
using LikelyWaters = std::vector<std::vector<Water>>;

struct RiverDay {
  const River& river;
  const RiverGraph& graph;
  const Settings& settings;
  const Tackle& tackle;
  const Judgement& judgement;
  const std::vector<GaugeRecord>& records;  // by River::gauges index
  const RiverFlows& flows;
  const RiverTemperatures& temperatures;
  std::chrono::year_month_day day{};
  Instant now{};
  const FishingTables* tables = nullptr;  // none: every cast is worked out
  const Weather* weather = nullptr;       // none: not known
  const LikelyWaters* likely = nullptr;   // none: only described water is known
  const Learned* learned = nullptr;       // of the log; none: nothing was met
  bool may_rise_on = false;               // a gauge has come up fast until now, and how far it will is not known
};

// Flow and temperature of a reach at an instant, or why not.
[[nodiscard]] Measured<PerCase<Discharge>> known_flow(const RiverDay& day, std::size_t reach, Instant t);
// The same with what runs beside it in the river's other threads: the flow that notes are made at, for a guide reads the
// gauge.
[[nodiscard]] Measured<PerCase<Discharge>> whole_flow(const RiverDay& day, std::size_t reach, Instant t);
[[nodiscard]] Measured<PerCase<Temperature>> known_temperature(const RiverDay& day, std::size_t reach, Instant t);

// Where on the globe a place of the river is: its nearest access that has a position.
[[nodiscard]] Measured<GeoPoint> position_near(const River& river, RiverPlace place);
// The sun of the day over a place; every event Absent where no access has a position.
[[nodiscard]] SunDay sun_over(const RiverDay& day, RiverPlace place);

}  // namespace floatwright
