#pragma once
// The one place with units and rounding for people. A rounding says how well the thing is known: depth and line to half
// a foot, speed to half a foot per second, flow to three figures at most, temperature to a degree.
// `*_figure` is the number alone, for a table whose head names the unit. A value that is no number prints "?".
#include <string>

#include "engine/river/river.hpp"
#include "engine/trip/caution.hpp"
#include "engine/trip/settings.hpp"
#include "engine/units/band.hpp"

namespace floatwright {

// "1,850": three figures from 100 up, two below.
[[nodiscard]] std::string flow_figure(Discharge flow, UnitSystem units);
[[nodiscard]] std::string say_flow(Discharge flow, UnitSystem units);
// "1,850 cfs (1,700-2,050)"
[[nodiscard]] std::string say_flow(const Band<Discharge>& flow, UnitSystem units);
// "1,500 cfs": two figures, for a flow at which something changes.
[[nodiscard]] std::string say_rough_flow(Discharge flow, UnitSystem units);
[[nodiscard]] std::string rough_flow_figure(Discharge flow, UnitSystem units);

// Depth of water, tip, leader: "2 1/2 ft", "0.8 m". Under a quarter of a foot "0".
[[nodiscard]] std::string length_figure(Length length, UnitSystem units);
[[nodiscard]] std::string say_length(Length length, UnitSystem units);
// How far the water surface stands higher or lower, without a sign: "2 1/2 in", "6 cm".
[[nodiscard]] std::string say_rise(Length rise, UnitSystem units);
// "3-4 1/2", one figure where both round alike.
[[nodiscard]] std::string length_range_figure(Length low, Length high, UnitSystem units);

// "3.5", "1.1", for a table; "3 1/2 ft/s", "1.1 m/s" in a sentence.
[[nodiscard]] std::string speed_figure(Speed speed, UnitSystem units);
[[nodiscard]] std::string speed_range_figure(Speed low, Speed high, UnitSystem units);
[[nodiscard]] std::string say_speed(Speed speed, UnitSystem units);
// "5 in/s", "13 cm/s"
[[nodiscard]] std::string sink_rate_figure(Speed rate, UnitSystem units);
[[nodiscard]] std::string say_sink_rate(Speed rate, UnitSystem units);
// Of the wind, as it is forecast: "12 mph", "19 km/h"; of rain: "1/2 in", "12 mm".
[[nodiscard]] std::string say_wind_speed(Speed speed, UnitSystem units);
[[nodiscard]] std::string say_rain_depth(Length depth, UnitSystem units);
// Depth times speed of a wade: "6.0 ft2/s", "0.56 m2/s".
[[nodiscard]] std::string say_depth_times_speed(DepthTimesSpeed product, UnitSystem units);

[[nodiscard]] std::string say_mass(Mass mass);  // "0.9 g" in both systems: the trade weighs flies so
[[nodiscard]] std::string temperature_figure(Temperature temperature, UnitSystem units);
[[nodiscard]] std::string say_temperature(Temperature temperature, UnitSystem units);

// Along the river, in miles or kilometres as its owner counts it, for metric people always in kilometres: "11.6 mi";
// "40.2" counted from where the file counts.
[[nodiscard]] std::string say_distance(Length distance, const River& river, UnitSystem units);
[[nodiscard]] std::string place_figure(RiverPlace place, const River& river, UnitSystem units);
[[nodiscard]] std::string say_place(RiverPlace place, const River& river, UnitSystem units);  // "mile 40.2", "km 64.7"
[[nodiscard]] std::string place_word(const River& river, UnitSystem units);                   // "mile", "km"

// "2 h 40 min", "40 min", to ten minutes (at least ten).
[[nodiscard]] std::string say_duration(Duration duration);
// "14 h", "3 days": how old something is. Minutes under two hours.
[[nodiscard]] std::string say_age(Duration age);

[[nodiscard]] std::string flow_unit(UnitSystem units);
[[nodiscard]] std::string length_unit(UnitSystem units);
[[nodiscard]] std::string speed_unit(UnitSystem units);
[[nodiscard]] std::string temperature_unit(UnitSystem units);

}  // namespace floatwright
