#include "adapters/in/files/quantities.hpp"

#include <fmt/format.h>

#include <cmath>

namespace floatwright {
namespace {

template <class Q>
struct Spelling {
  std::string_view ending, words;  // "_ft", "feet"
  Q (*make)(double);
};

// Of any quantity the number inside, to compare and to turn back into the typed unit.
double raw(double value) { return value; }
double raw(Temperature value) { return value.in_celsius(); }
template <int L, int M, int T, class Meaning>
double raw(Quantity<L, M, T, Meaning> value) {
  return value.si();
}

// Every maker is a straight line, so two of its points turn it round.
template <class Q>
double in_typed_unit(Q value, const Spelling<Q>& spelling) {
  const double at_zero = raw(spelling.make(0.0));
  return (raw(value) - at_zero) / (raw(spelling.make(1.0)) - at_zero);
}

template <class Q>
std::string allowed_words(Range<Q> range, const Spelling<Q>& spelling) {
  return fmt::format("a number of {} from {:.4g} to {:.4g}", spelling.words, in_typed_unit(range.least, spelling),
                     in_typed_unit(range.most, spelling));
}

template <class Q>
bool is_within(Q value, Range<Q> range) {
  // A limit typed in the other unit system must not fall out by the last digit of a double.
  const double slack = 1e-9 * std::max(std::abs(raw(range.least)), std::abs(raw(range.most)));
  return raw(value) >= raw(range.least) - slack && raw(value) <= raw(range.most) + slack;
}

template <class Q>
std::optional<Q> taken(TypedObject& in, std::string_view key, double typed, const Spelling<Q>& spelling,
                       Range<Q> range) {
  const Q value = spelling.make(typed);
  if (std::isfinite(raw(value)) && is_within(value, range)) return value;
  const std::string allowed = allowed_words(range, spelling);
  in.tell(key, fmt::format("{}", typed), allowed, fmt::format("Write {}, or another unit in the key.", allowed));
  return std::nullopt;
}

template <class Q>
std::vector<std::string_view> endings_of(const std::vector<Spelling<Q>>& spellings) {
  std::vector<std::string_view> endings;
  for (const Spelling<Q>& spelling : spellings) endings.push_back(spelling.ending);
  return endings;
}

template <class Q>
std::optional<Q> read(TypedObject& in, std::string_view name, const std::vector<Spelling<Q>>& spellings, Range<Q> range,
                      Need need) {
  const auto number = in.spelt_number(name, endings_of(spellings), need);
  if (!number) return std::nullopt;
  return taken(in, number->key, number->typed, spellings[number->spelling], range);
}

SurfaceSpeed surface(Speed speed) { return SurfaceSpeed::from_si(speed.si()); }
MeanSpeed mean(Speed speed) { return MeanSpeed::from_si(speed.si()); }
double square_feet_per_second(double v) { return v * kMetresPerFoot * kMetresPerFoot; }
double square_metres_per_second(double v) { return v; }

const std::vector<Spelling<Mass>>& mass_spellings() {
  static const std::vector<Spelling<Mass>> kSpellings{{"_gr", "grains", grains}, {"_g", "grams", grams}};
  return kSpellings;
}

const std::vector<Spelling<Speed>>& speed_spellings() {
  static const std::vector<Spelling<Speed>> kSpellings{{"_in_s", "inches per second", inches_per_second},
                                                       {"_ft_s", "feet per second", feet_per_second},
                                                       {"_m_s", "metres per second", metres_per_second}};
  return kSpellings;
}

template <class Q>
std::vector<Q> read_list(TypedObject& in, std::string_view name, const std::vector<Spelling<Q>>& spellings,
                         Range<Q> range) {
  std::vector<Q> values;
  const auto list = in.spelt_list(name, endings_of(spellings));
  if (!list) return values;
  for (const LocatedJson& item : list->value->items) {
    if (item.kind != JsonKind::Number) {
      in.tell(list->key, describe(item) + " in the list", "numbers without quotes", "Write numbers here.");
    } else if (const auto value = taken(in, list->key, item.number, spellings[list->spelling], range)) {
      values.push_back(*value);
    }
  }
  return values;
}

}  // namespace

std::optional<Length> read_length(In in, std::string_view name, Range<Length> range, Need need) {
  return read<Length>(in, name, {{"_ft", "feet", feet}, {"_m", "metres", metres}}, range, need);
}
std::optional<Length> read_distance(In in, std::string_view name, Range<Length> range, Need need) {
  return read<Length>(in, name, {{"_mi", "miles", miles}, {"_km", "kilometres", kilometres}}, range, need);
}
std::optional<Area> read_area(In in, std::string_view name, Range<Area> range, Need need) {
  return read<Area>(in, name,
                    {{"_mi2", "square miles", square_miles}, {"_km2", "square kilometres", square_kilometres}}, range,
                    need);
}
std::optional<Duration> read_duration(In in, std::string_view name, Range<Duration> range, Need need) {
  return read<Duration>(in, name, {{"_h", "hours", hours}, {"_min", "minutes", minutes}}, range, need);
}
std::optional<Discharge> read_flow(In in, std::string_view name, Range<Discharge> range, Need need) {
  return read<Discharge>(
      in, name, {{"_cfs", "cubic feet per second", cubic_feet_per_second}, {"_m3_s", "m3/s", cubic_metres_per_second}},
      range, need);
}
std::optional<SurfaceSpeed> read_surface_speed(In in, std::string_view name, Range<SurfaceSpeed> range, Need need) {
  return read<SurfaceSpeed>(
      in, name,
      {{"_ft_s", "feet per second", [](double v) { return surface(feet_per_second(v)); }},
       {"_m_s", "metres per second", [](double v) { return surface(metres_per_second(v)); }},
       {"_mph", "miles per hour", [](double v) { return surface(miles_per_hour(v)); }},
       {"_km_h", "kilometres per hour", [](double v) { return surface(kilometres_per_hour(v)); }}},
      range, need);
}
std::optional<MeanSpeed> read_mean_speed(In in, std::string_view name, Range<MeanSpeed> range, Need need) {
  return read<MeanSpeed>(in, name,
                         {{"_ft_s", "feet per second", [](double v) { return mean(feet_per_second(v)); }},
                          {"_m_s", "metres per second", [](double v) { return mean(metres_per_second(v)); }},
                          {"_mph", "miles per hour", [](double v) { return mean(miles_per_hour(v)); }},
                          {"_km_h", "kilometres per hour", [](double v) { return mean(kilometres_per_hour(v)); }}},
                         range, need);
}
std::optional<Speed> read_sink_rate(In in, std::string_view name, Range<Speed> range, Need need) {
  return read<Speed>(in, name, speed_spellings(), range, need);
}
std::optional<Temperature> read_temperature(In in, std::string_view name, Range<Temperature> range, Need need) {
  return read<Temperature>(in, name, {{"_f", "degrees Fahrenheit", fahrenheit}, {"_c", "degrees Celsius", celsius}},
                           range, need);
}
std::optional<Mass> read_mass(In in, std::string_view name, Range<Mass> range, Need need) {
  return read<Mass>(in, name, mass_spellings(), range, need);
}
std::optional<LinearDensity> read_linear_density(In in, std::string_view name, Range<LinearDensity> range, Need need) {
  return read<LinearDensity>(
      in, name,
      {{"_gr_per_ft", "grains per foot", grains_per_foot},
       {"_g_per_m", "grams per metre", [](double v) { return kilograms_per_metre(v / 1000.0); }}},
      range, need);
}
std::optional<double> read_depth_times_speed_m2_s(In in, std::string_view name, Range<double> range, Need need) {
  return read<double>(in, name,
                      {{"_ft2_s", "ft2/s", square_feet_per_second}, {"_m2_s", "m2/s", square_metres_per_second}}, range,
                      need);
}

std::vector<Mass> read_masses(In in, std::string_view name, Range<Mass> range) {
  return read_list(in, name, mass_spellings(), range);
}
std::vector<Speed> read_speeds(In in, std::string_view name, Range<Speed> range) {
  return read_list(in, name, speed_spellings(), range);
}
std::optional<Length> read_diameter(In in, std::string_view name, Range<Length> range, Need need) {
  return read<Length>(in, name, {{"_mm", "millimetres", millimetres}, {"_in", "inches", inches}}, range, need);
}
std::optional<Area> read_drag_area(In in, std::string_view name, Range<Area> range, Need need) {
  return read<Area>(in, name, {{"_m2", "m2", square_metres}}, range, need);
}
std::optional<Duration> read_seconds(In in, std::string_view name, Range<Duration> range, Need need) {
  return read<Duration>(in, name, {{"_s", "seconds", seconds}, {"_min", "minutes", minutes}}, range, need);
}
std::optional<Force> read_force(In in, std::string_view name, Range<Force> range, Need need) {
  return read<Force>(in, name, {{"_n", "newtons", newtons}}, range, need);
}
std::optional<Density> read_density(In in, std::string_view name, Range<Density> range, Need need) {
  return read<Density>(in, name, {{"_kg_m3", "kg/m3", kilograms_per_cubic_metre}}, range, need);
}
std::optional<Angle> read_angle(In in, std::string_view name, Range<Angle> range, Need need) {
  return read<Angle>(in, name, {{"_deg", "degrees", degrees}}, range, need);
}

std::optional<TypedPlace> read_typed_place(In in, std::string_view stem, Need need) {
  const auto number = in.spelt_number(stem, {"mile", "km"}, need);
  if (!number) return std::nullopt;
  const Range<Length> kLongestRiver{kilometres(0.0), kilometres(10000.0)};
  const bool in_kilometres = number->spelling == 1;
  const Spelling<Length> spelling =
      in_kilometres ? Spelling<Length>{"km", "kilometres", kilometres} : Spelling<Length>{"mile", "miles", miles};
  const auto along = taken(in, number->key, number->typed, spelling, kLongestRiver);
  if (!along) return std::nullopt;
  return TypedPlace{number->key, *along, in_kilometres};
}

}  // namespace floatwright
