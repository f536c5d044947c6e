#pragma once
// What the river is doing at a gauge and how the day was told from it, in one sentence: "Lantern at Old Ferry 2,030 cfs
// at 19:30, up 17 % in 6 h below a dam that ramps; tomorrow as at the same hour on like days". Snowmelt is said only of
// a river that its owner calls snow-fed.
#include <string>

#include "engine/trip/day_plan.hpp"
#include "engine/wording/clock.hpp"

namespace floatwright {

struct StateWords {
  const River& river;
  const LocalClock& clock;
  UnitSystem units = UnitSystem::Us;
  std::chrono::year_month_day seen_from{};  // the day on which the sentence is read
  std::string day = "tomorrow";             // how the day planned is called
  std::string dam;                          // whose typed releases the gauge follows; empty: none
};

// Two or three words for the head of a page: "falling slowly".
[[nodiscard]] std::string say_trend(const GaugeOutlook& outlook, bool snow_fed);
[[nodiscard]] std::string say(const GaugeOutlook& outlook, const StateWords& words);

// Name of the dam whose typed releases a gauge of the plan is taken to show; empty where it goes by its own days.
[[nodiscard]] std::string followed_dam(const DayPlan& plan, const River& river, const std::string& gauge);

}  // namespace floatwright
