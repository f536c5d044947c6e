#include "engine/wording/units.hpp"

#include <fmt/format.h>

#include <cmath>

#include "engine/units/with_commas.hpp"

namespace floatwright {
namespace {

const std::string kNoNumber = "?";

// Rounded to a number of figures; as many decimals as those figures need.
std::string to_figures(double value, int figures) {
  if (!std::isfinite(value)) return kNoNumber;
  if (std::abs(value) < 5e-4) return "0";
  const auto leading = [](double v) { return static_cast<int>(std::floor(std::log10(std::abs(v)))); };
  const auto rounded_to = [&](double v) {
    const double step = std::pow(10.0, leading(v) - figures + 1);
    return std::round(v / step) * step;
  };
  const double rounded = rounded_to(value);
  const int decimals = std::max(0, figures - 1 - leading(rounded));
  return with_commas(fmt::format("{:.{}f}", rounded, decimals));
}

double flow_number(Discharge flow, UnitSystem units) {
  return units == UnitSystem::Us ? in_cubic_feet_per_second(flow) : in_cubic_metres_per_second(flow);
}

// Three figures where the third is at least a tenth of the unit: 1,850 cfs, 52.4 m3/s, 8.2 m3/s, 94 cfs.
int figures_of_flow(double flow, UnitSystem units) {
  const double three_from = units == UnitSystem::Us ? 100.0 : 10.0;
  return std::abs(flow) >= three_from ? 3 : 2;
}

// Rounded to halves: "2 1/2", "1/2", "0".
std::string in_halves(double value) {
  if (!std::isfinite(value)) return kNoNumber;
  const double halves = std::round(std::abs(value) * 2.0);
  const double whole = std::floor(halves / 2.0);
  const bool half = halves - 2.0 * whole > 0.5;
  const std::string sign = value < 0 && halves > 0 ? "-" : "";
  if (half && whole < 0.5) return sign + "1/2";
  return sign + with_commas(fmt::format("{:.0f}", whole)) + (half ? " 1/2" : "");
}

std::string with_decimals(double value, int decimals) {
  if (!std::isfinite(value)) return kNoNumber;
  const std::string text = fmt::format("{:.{}f}", value, decimals);
  return text.find_first_not_of("-0.") == std::string::npos && text.front() == '-' ? text.substr(1) : text;
}

std::string range(const std::string& low, const std::string& high) { return low == high ? low : low + "-" + high; }

}  // namespace

std::string flow_unit(UnitSystem units) { return units == UnitSystem::Us ? "cfs" : "m3/s"; }
std::string length_unit(UnitSystem units) { return units == UnitSystem::Us ? "ft" : "m"; }
std::string speed_unit(UnitSystem units) { return units == UnitSystem::Us ? "ft/s" : "m/s"; }
std::string temperature_unit(UnitSystem units) { return units == UnitSystem::Us ? "F" : "C"; }

std::string flow_figure(Discharge flow, UnitSystem units) {
  const double number = flow_number(flow, units);
  return to_figures(number, figures_of_flow(number, units));
}

std::string say_flow(Discharge flow, UnitSystem units) { return flow_figure(flow, units) + " " + flow_unit(units); }

std::string say_flow(const Band<Discharge>& flow, UnitSystem units) {
  const std::string best = say_flow(flow.best, units);
  const std::string low = flow_figure(flow.low, units), high = flow_figure(flow.high, units);
  return low == high ? best : fmt::format("{} ({}-{})", best, low, high);
}

std::string rough_flow_figure(Discharge flow, UnitSystem units) { return to_figures(flow_number(flow, units), 2); }

std::string say_rough_flow(Discharge flow, UnitSystem units) {
  return rough_flow_figure(flow, units) + " " + flow_unit(units);
}

std::string length_figure(Length length, UnitSystem units) {
  return units == UnitSystem::Us ? in_halves(in_feet(length)) : with_decimals(in_metres(length), 1);
}

std::string say_length(Length length, UnitSystem units) {
  return length_figure(length, units) + " " + length_unit(units);
}

std::string say_rise(Length rise, UnitSystem units) {
  if (units == UnitSystem::Us) return in_halves(std::abs(in_inches(rise))) + " in";
  return with_decimals(std::abs(in_metres(rise)) * 100.0, 0) + " cm";
}

std::string length_range_figure(Length low, Length high, UnitSystem units) {
  return range(length_figure(low, units), length_figure(high, units));
}

std::string speed_figure(Speed speed, UnitSystem units) {
  if (units == UnitSystem::Metric) return with_decimals(in_metres_per_second(speed), 1);
  return with_decimals(std::round(in_feet_per_second(speed) * 2.0) / 2.0, 1);
}

std::string speed_range_figure(Speed low, Speed high, UnitSystem units) {
  return range(speed_figure(low, units), speed_figure(high, units));
}

std::string say_speed(Speed speed, UnitSystem units) {
  const std::string figure =
      units == UnitSystem::Us ? in_halves(in_feet_per_second(speed)) : with_decimals(in_metres_per_second(speed), 1);
  return figure + " " + speed_unit(units);
}

std::string say_wind_speed(Speed speed, UnitSystem units) {
  return units == UnitSystem::Us ? with_decimals(in_miles_per_hour(speed), 0) + " mph"
                                 : with_decimals(in_metres_per_second(speed) * 3.6, 0) + " km/h";
}

std::string say_rain_depth(Length depth, UnitSystem units) {
  return units == UnitSystem::Us ? in_halves(in_inches(depth)) + " in" : with_decimals(in_millimetres(depth), 0) + " mm";
}

std::string sink_rate_figure(Speed rate, UnitSystem units) {
  return units == UnitSystem::Us ? in_halves(in_inches_per_second(rate))
                                 : with_decimals(in_metres_per_second(rate) * 100.0, 0);
}

std::string say_sink_rate(Speed rate, UnitSystem units) {
  return sink_rate_figure(rate, units) + (units == UnitSystem::Us ? " in/s" : " cm/s");
}

std::string say_depth_times_speed(DepthTimesSpeed product, UnitSystem units) {
  if (units == UnitSystem::Metric) return with_decimals(product.si(), 2) + " m2/s";
  return with_decimals(product.si() / (kMetresPerFoot * kMetresPerFoot), 1) + " ft2/s";
}

std::string say_mass(Mass mass) { return with_decimals(in_grams(mass), 1) + " g"; }

std::string temperature_figure(Temperature temperature, UnitSystem units) {
  if (units == UnitSystem::Us) return with_decimals(in_fahrenheit(temperature), 0);
  const double halves = std::round(in_celsius(temperature) * 2.0);
  return with_decimals(halves / 2.0, std::fmod(halves, 2.0) == 0.0 ? 0 : 1);
}

std::string say_temperature(Temperature temperature, UnitSystem units) {
  return temperature_figure(temperature, units) + " " + temperature_unit(units);
}

namespace {

bool counts_kilometres(const River& river, UnitSystem units) { return river.kilometres || units == UnitSystem::Metric; }

}  // namespace

std::string say_distance(Length distance, const River& river, UnitSystem units) {
  return counts_kilometres(river, units) ? with_decimals(in_kilometres(distance), 1) + " km"
                                         : with_decimals(in_miles(distance), 1) + " mi";
}

std::string place_figure(RiverPlace place, const River& river, UnitSystem units) {
  const double sign = river.miles_from_source ? -1.0 : 1.0;  // the reader turned the file's count
  const double counted = counts_kilometres(river, units) ? in_river_kilometres(place) : in_river_miles(place);
  return with_decimals(sign * counted, 1);
}

std::string place_word(const River& river, UnitSystem units) { return counts_kilometres(river, units) ? "km" : "mile"; }

std::string say_place(RiverPlace place, const River& river, UnitSystem units) {
  return place_word(river, units) + " " + place_figure(place, river, units);
}

std::string say_duration(Duration duration) {
  const double exact = in_minutes(duration);
  if (!std::isfinite(exact)) return kNoNumber;
  const auto tens = static_cast<long>(std::max(1.0, std::round(exact / 10.0)));
  const long whole_hours = tens * 10 / 60, rest = tens * 10 % 60;
  if (whole_hours == 0) return fmt::format("{} min", rest);
  return rest == 0 ? fmt::format("{} h", whole_hours) : fmt::format("{} h {} min", whole_hours, rest);
}

std::string say_age(Duration age) {
  if (!std::isfinite(in_hours(age))) return kNoNumber;
  if (in_minutes(age) < 119.5) return fmt::format("{:.0f} min", in_minutes(age));
  if (in_hours(age) < 47.5) return fmt::format("{:.0f} h", in_hours(age));
  return fmt::format("{:.0f} days", in_hours(age) / 24.0);
}

}  // namespace floatwright
