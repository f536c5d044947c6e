#pragma once
// The sun over a place: rise, set, civil twilight and elevation. Low accuracy: within a minute of the almanacs between
// 65 N and 65 S, this century; refraction as a fixed 34' and the half disc 16' (zenith 90.833 degrees).
// Source: Meeus, Astronomical Algorithms (2nd ed.), chapter 25, in the form of NOAA's solar calculator; symbols as there.
#include "engine/river/river.hpp"
#include "engine/units/instant.hpp"
#include "engine/units/measured.hpp"

namespace floatwright {

struct SunPosition {
  Angle true_longitude, apparent_longitude, obliquity, right_ascension, declination;
  Duration equation_of_time;  // apparent less mean solar time
};
// Universal time is taken for dynamical time: a minute's difference, under 0.001 degrees.
[[nodiscard]] SunPosition sun_position(Instant t);

// Of the sun's centre over the horizon, refraction left out; negative at night.
[[nodiscard]] Angle sun_elevation(const GeoPoint& at, Instant t);

struct SunDay {
  Instant noon{};  // sun highest
  Measured<Instant> civil_dawn, sunrise, sunset, civil_dusk;  // Absent: "the sun stays up", "the sun does not rise", ...
};
// The solar day whose noon is nearest to `about_noon` (local noon of the day asked for), to the second.
[[nodiscard]] SunDay sun_day(const GeoPoint& at, Instant about_noon);

}  // namespace floatwright
