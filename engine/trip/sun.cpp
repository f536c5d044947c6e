#include "engine/trip/sun.hpp"

#include <cmath>
#include <numbers>
#include <optional>

namespace floatwright {
namespace {

constexpr double kRad = std::numbers::pi / 180.0;
constexpr double kSunriseZenith = 90.833;  // degrees, NOAA: 34' of refraction and 16' of half disc
constexpr double kCivilZenith = 96.0;      // degrees
constexpr double kUnixEpochJulianDay = 2440587.5;
constexpr double kSecondsPerDay = 86400.0;

double turned_to_circle(double degrees) { return degrees - 360.0 * std::floor(degrees / 360.0); }

// Elements of the sun's apparent orbit, degrees; T in Julian centuries from J2000.
struct Elements {
  double mean_longitude, mean_anomaly, eccentricity, centre, node;
};

Elements elements(double T) {
  const double M = 357.52911 + T * (35999.05029 - 0.0001537 * T);
  return {.mean_longitude = turned_to_circle(280.46646 + T * (36000.76983 + 0.0003032 * T)),
          .mean_anomaly = turned_to_circle(M),
          .eccentricity = 0.016708634 - T * (0.000042037 + 0.0000001267 * T),
          .centre = std::sin(M * kRad) * (1.914602 - T * (0.004817 + 0.000014 * T)) +
                    std::sin(2 * M * kRad) * (0.019993 - 0.000101 * T) + std::sin(3 * M * kRad) * 0.000289,
          .node = 125.04 - 1934.136 * T};
}

double mean_obliquity(double T) {  // degrees
  const double arc_seconds = 21.448 - T * (46.815 + T * (0.00059 - T * 0.001813));
  return 23.0 + (26.0 + arc_seconds / 60.0) / 60.0;
}

double equation_of_time_minutes(const Elements& e, double obliquity) {
  const double y = std::pow(std::tan(obliquity * kRad / 2), 2);
  const double L = e.mean_longitude * kRad;  // rad
  const double M = e.mean_anomaly * kRad;    // rad
  const double x = e.eccentricity;
  return 4.0 / kRad *
         (y * std::sin(2 * L) - 2 * x * std::sin(M) + 4 * x * y * std::sin(M) * std::cos(2 * L) -
          0.5 * y * y * std::sin(4 * L) - 1.25 * x * x * std::sin(2 * M));
}

// Half the arc of the day over a zenith distance, degrees of hour angle; > 180 or < 0 never: `up` and `down` instead.
struct DayArc {
  std::optional<double> hour_angle;
  bool stays_above = false;
};

DayArc day_arc(double latitude_deg, Angle declination, double zenith_deg) {
  const double phi = latitude_deg * kRad;
  const double delta = in_radians(declination);
  const double cos_h = (std::cos(zenith_deg * kRad) - std::sin(phi) * std::sin(delta)) / (std::cos(phi) * std::cos(delta));
  if (cos_h < -1.0) return {std::nullopt, true};
  if (!(cos_h <= 1.0)) return {};
  return {std::acos(cos_h) / kRad, false};
}

// Seconds of the clock per degree of hour angle.
constexpr double kSecondsPerDegree = 240.0;

Instant solar_noon(const GeoPoint& at, Instant about_noon) {
  const auto day_of = [&](Instant t) { return std::chrono::floor<std::chrono::days>(t); };
  // Mean noon of the Greenwich day is 43200 s less longitude; the day is chosen so that it is nearest to `about_noon`.
  const double mean_noon = kSecondsPerDay / 2 - kSecondsPerDegree * at.longitude_deg;  // s after 0 h UT
  const double off = static_cast<double>((about_noon - day_of(about_noon)).count()) - mean_noon;
  const Instant mean = about_noon - period(seconds(off - kSecondsPerDay * std::round(off / kSecondsPerDay)));
  const Instant first = mean - period(sun_position(mean).equation_of_time);
  return mean - period(sun_position(first).equation_of_time);
}

// side -1: rising, +1: setting. Iterated so that declination and equation of time are those of the event.
Measured<Instant> event(const GeoPoint& at, Instant noon, double zenith, int side, const std::string& thing) {
  const Instant mean_noon = noon + period(sun_position(noon).equation_of_time);
  Instant t = noon;
  for (int pass = 0; pass < 20; ++pass) {
    const SunPosition sun = sun_position(t);
    const DayArc arc = day_arc(at.latitude_deg, sun.declination, zenith);
    if (!arc.hour_angle) return Absent{arc.stays_above ? thing + " all day" : "no " + thing + " that day"};
    const Instant next = mean_noon - period(sun.equation_of_time) + period(seconds(side * kSecondsPerDegree * *arc.hour_angle));
    if (next == t) break;
    t = next;
  }
  return t;
}

}  // namespace

SunPosition sun_position(Instant t) {
  const double julian_day = kUnixEpochJulianDay + static_cast<double>(t.time_since_epoch().count()) / kSecondsPerDay;
  const double T = (julian_day - 2451545.0) / 36525.0;  // Julian centuries from J2000
  const Elements e = elements(T);
  const double obliquity = mean_obliquity(T) + 0.00256 * std::cos(e.node * kRad);          // degrees
  const double true_longitude = e.mean_longitude + e.centre;                              // degrees
  const double apparent = true_longitude - 0.00569 - 0.00478 * std::sin(e.node * kRad);   // degrees
  const double ra = std::atan2(std::cos(obliquity * kRad) * std::sin(apparent * kRad), std::cos(apparent * kRad)) / kRad;
  return {.true_longitude = degrees(turned_to_circle(true_longitude)),
          .apparent_longitude = degrees(turned_to_circle(apparent)),
          .obliquity = degrees(obliquity),
          .right_ascension = degrees(turned_to_circle(ra)),
          .declination = radians(std::asin(std::sin(obliquity * kRad) * std::sin(apparent * kRad))),
          .equation_of_time = minutes(equation_of_time_minutes(e, obliquity))};
}

Angle sun_elevation(const GeoPoint& at, Instant t) {
  const SunPosition sun = sun_position(t);
  const auto since_midnight = duration(t - std::chrono::floor<std::chrono::days>(t));
  const double solar_minutes = in_minutes(since_midnight) + in_minutes(sun.equation_of_time) + 4.0 * at.longitude_deg;
  const double H = (solar_minutes / 4.0 - 180.0) * kRad;      // rad, hour angle
  const double phi = at.latitude_deg * kRad;                  // rad
  const double delta = in_radians(sun.declination);           // rad
  return radians(std::asin(std::sin(phi) * std::sin(delta) + std::cos(phi) * std::cos(delta) * std::cos(H)));
}

SunDay sun_day(const GeoPoint& at, Instant about_noon) {
  const Instant noon = solar_noon(at, about_noon);
  return {.noon = noon,
          .civil_dawn = event(at, noon, kCivilZenith, -1, "twilight"),
          .sunrise = event(at, noon, kSunriseZenith, -1, "sun"),
          .sunset = event(at, noon, kSunriseZenith, +1, "sun"),
          .civil_dusk = event(at, noon, kCivilZenith, +1, "twilight")};
}

}  // namespace floatwright
