#pragma once
// Quantities out of a TypedObject. The name is given without its unit ("depth"); the key in the file ends in one of the
// spellings of that kind. Both ends of a range are allowed. A number that is not there, not finite, negative where that
// means nothing, or out of range is a Problem in the unit it was typed in.
#include <string_view>

#include "adapters/in/files/typed_object.hpp"
#include "engine/units/unit.hpp"

namespace floatwright {

template <class Q>
struct Range {
  Q least, most;
};

using In = TypedObject&;
// _ft _m
[[nodiscard]] std::optional<Length> read_length(In in, std::string_view name, Range<Length> range, Need need);
// _mi _km
[[nodiscard]] std::optional<Length> read_distance(In in, std::string_view name, Range<Length> range, Need need);
// _mi2 _km2
[[nodiscard]] std::optional<Area> read_area(In in, std::string_view name, Range<Area> range, Need need);
// _mm _in
[[nodiscard]] std::optional<Length> read_diameter(In in, std::string_view name, Range<Length> range, Need need);
// _m2
[[nodiscard]] std::optional<Area> read_drag_area(In in, std::string_view name, Range<Area> range, Need need);
// _s _min
[[nodiscard]] std::optional<Duration> read_seconds(In in, std::string_view name, Range<Duration> range, Need need);
// _h _min
[[nodiscard]] std::optional<Duration> read_duration(In in, std::string_view name, Range<Duration> range, Need need);
// _cfs _m3_s
[[nodiscard]] std::optional<Discharge> read_flow(In in, std::string_view name, Range<Discharge> range, Need need);
// _ft_s _m_s _mph _km_h
[[nodiscard]] std::optional<SurfaceSpeed> read_surface_speed(In in, std::string_view name, Range<SurfaceSpeed> range,
                                                             Need need);
[[nodiscard]] std::optional<MeanSpeed> read_mean_speed(In in, std::string_view name, Range<MeanSpeed> range, Need need);
// _in_s _ft_s _m_s
[[nodiscard]] std::optional<Speed> read_sink_rate(In in, std::string_view name, Range<Speed> range, Need need);
// A list of speeds under one key: "line_velocity_m_s": [0, 0].
[[nodiscard]] std::vector<Speed> read_speeds(In in, std::string_view name, Range<Speed> range);
// _n
[[nodiscard]] std::optional<Force> read_force(In in, std::string_view name, Range<Force> range, Need need);
// _kg_m3
[[nodiscard]] std::optional<Density> read_density(In in, std::string_view name, Range<Density> range, Need need);
// _deg
[[nodiscard]] std::optional<Angle> read_angle(In in, std::string_view name, Range<Angle> range, Need need);
// _f _c
[[nodiscard]] std::optional<Temperature> read_temperature(In in, std::string_view name, Range<Temperature> range,
                                                          Need need);
// _gr _g
[[nodiscard]] std::optional<Mass> read_mass(In in, std::string_view name, Range<Mass> range, Need need);
// A list of masses under one key: "shot_g": [0.2, 0.4].
[[nodiscard]] std::vector<Mass> read_masses(In in, std::string_view name, Range<Mass> range);
// _gr_per_ft _g_per_m
[[nodiscard]] std::optional<LinearDensity> read_linear_density(In in, std::string_view name, Range<LinearDensity> range,
                                                               Need need);
// _ft2_s _m2_s: depth times speed, the measure of a wading limit, which has no Quantity of its own; m2/s.
[[nodiscard]] std::optional<double> read_depth_times_speed_m2_s(In in, std::string_view name, Range<double> range,
                                                                Need need);

// A place typed in miles or kilometres of river, as a distance along it from the file's zero.
struct TypedPlace {
  std::string key;
  Length along;
  bool in_kilometres = false;
};
// "mile" or "km" after the stem, which is "" or "from_".
[[nodiscard]] std::optional<TypedPlace> read_typed_place(In in, std::string_view stem, Need need);

}  // namespace floatwright
