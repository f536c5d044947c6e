#pragma once
// What the river is doing at a gauge and how tomorrow was told from it, in one sentence: "falling slowly: down 3 % in
// 6 h; tomorrow falls on, more slowly". Snowmelt is said only of a river that its owner calls snow-fed.
#include <string>

#include "engine/forecast/outlook.hpp"

namespace floatwright {

// Two or three words for the head of a page: "falling slowly".
[[nodiscard]] std::string say_trend(const GaugeOutlook& outlook, bool snow_fed);
// `day`: how the day planned is called, "tomorrow", "today".
[[nodiscard]] std::string say(const GaugeOutlook& outlook, bool snow_fed, const std::string& day = "tomorrow");

}  // namespace floatwright
